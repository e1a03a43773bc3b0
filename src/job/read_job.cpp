#include "job/read.h"

#include <algorithm>
#include <map>

#include "job/parse.h"
#include "job/tables.h"
#include "job/text.h"
#include "job/validate.h"

namespace kerfpacket::job {
namespace {

/// Reads the file's own top level, in the order in which later parts need earlier ones.
class JobReader {
public:
    JobReader(Context& context, const toml::table& root) : context_(context), top_(context, root, "the job file") {}

    Job run() {
        read_head();
        read_pieces<Opening>(
            "opening", [this](const toml::table& t) { return judged_opening(t); }, job_.openings);
        read_pieces<Wall>(
            "wall", [this](const toml::table& t) { return judged_wall(t); }, job_.walls);
        if (const auto* stock = top_.table("stock", Need::optional, "[stock]"))
            job_.stock = read_stock(context_, *stock);
        if (pieces_ == 0)
            top_.missing({"opening"}, "there is nothing to bend", "a job needs at least one [[opening]] or [[wall]]");
        top_.finish();
        return std::move(job_);
    }

    bool head_is_good() const { return head_is_good_; }

private:
    void read_head() {
        job_.printer = default_printer();
        const auto* head = top_.table("job", Need::required, "[job]");
        const auto* saw = top_.table("saw", Need::required, "[saw]");
        const auto* printer = top_.table("printer", Need::optional, "[printer]");
        if (head != nullptr) {
            read_units(context_, *head);
            job_.header = read_header(context_, *head);
        }
        if (saw != nullptr) job_.saw = read_saw(context_, *saw);
        if (printer != nullptr) job_.printer = read_printer(context_, *printer);
        head_is_good_ = head != nullptr && saw != nullptr && context_.mistakes() == 0;
    }

    Opening judged_opening(const toml::table& table) {
        Opening opening = read_opening(context_, table);
        check_head(context_, opening);
        check_liner(context_, opening);
        if (opening.ordinates) check_ordinates(context_, *opening.ordinates);
        if (opening.casing) check_casing(context_, *opening.casing);
        const auto width = known(opening.span) ? std::optional(opening.span.value) : std::nullopt;
        if (opening.form) check_form(context_, *opening.form, width);
        check_board(context_, opening.liner, job_.saw);
        // A half circle is drawn as one: a rise within tape accuracy of it is not carried on.
        if (opening.shape.value == Shape::semicircular && known(opening.span))
            opening.rise = {opening.span.value / 2, known(opening.rise) ? opening.rise.at : opening.span.at};
        return opening;
    }

    Wall judged_wall(const toml::table& table) {
        Wall wall = read_wall(context_, table);
        check_wall(context_, wall);
        if (wall.ordinates) check_ordinates(context_, *wall.ordinates);
        if (wall.form) check_form(context_, *wall.form, width_of(wall));
        check_board(context_, wall.board, job_.saw);
        return wall;
    }

    /// Reads every [[key]]; a piece with a mistake is told of and left out.
    template <class Piece, class Read>
    void read_pieces(std::string_view key, Read read, std::vector<Piece>& pieces) {
        const auto* node = top_.find(key, Need::optional, "");
        if (node == nullptr) return;
        const std::string header = "[[" + std::string(key) + "]]";
        const std::string hint = "expected the line " + header + " and its keys below it";
        const auto take = [&](const toml::table& table) {
            const std::size_t before = context_.mistakes();
            Piece piece = read(table);
            note_id(piece.id);
            if (context_.mistakes() == before) pieces.push_back(std::move(piece));
        };
        ++pieces_;
        if (const auto* single = node->as_table()) {
            context_.error(position(*node), "write " + header + " in double brackets",
                           "there may be more than one of them in a job");
            take(*single);
        } else if (const auto* list = node->as_array()) {
            if (list->empty()) --pieces_;
            for (const auto& element : *list) {
                if (const auto* table = element.as_table()) take(*table);
                else context_.error(position(element), "this is no " + header + " table", hint);
            }
        } else {
            context_.error(position(*node), std::string(key) + " must be a table", hint);
        }
    }

    void note_id(const Sourced<std::string>& id) {
        if (!known(id)) return;
        const auto [first, is_new] = ids_.emplace(id.value, id.at);
        if (!is_new)
            context_.error(id.at, "id " + in_quotes(id.value) + " is used twice",
                           "line " + std::to_string(first->second.line) + " has it already");
    }

    Context& context_;
    TableReader top_;
    Job job_;
    std::map<std::string, Position> ids_;
    int pieces_ = 0;
    bool head_is_good_ = false;
};

void sort_by_position(Diagnostics& diagnostics) {
    std::stable_sort(diagnostics.begin(), diagnostics.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
}

}  // namespace

Reading read_job(const Source& source) {
    Parsed parsed = parse(source.text);
    Reading reading;
    reading.diagnostics = std::move(parsed.diagnostics);
    if (!parsed.usable) return reading;

    Context context(source.text, std::move(parsed.broken_lines));
    JobReader reader(context, parsed.root);
    reading.job = reader.run();
    reading.complete = reader.head_is_good();
    reading.diagnostics.insert(reading.diagnostics.end(), context.found().begin(), context.found().end());
    sort_by_position(reading.diagnostics);
    if (reading.complete) reading.job.fingerprint = fingerprint(reading.job);
    return reading;
}

}  // namespace kerfpacket::job
