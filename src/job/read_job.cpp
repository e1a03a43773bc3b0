#include "job/read.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <set>

#include "job/keys.h"
#include "job/parse.h"
#include "job/tables.h"
#include "job/text.h"
#include "job/validate.h"

namespace kerfpacket::job {
namespace {

/// A house has fewer arches and curved walls; each takes its pages and its share of memory.
constexpr std::size_t most_pieces = 100;

/// Reads the file's own top level, in the order in which later parts need earlier ones.
class JobReader {
public:
    JobReader(Context& context, const toml::table& root, const Shop& shop)
        : context_(context), top_(context, root, "the job file"), shop_(shop), beside_(shop.beside) {}

    Job run() {
        read_head();
        read_pieces<Opening>(
            "opening", [this](const toml::table& t) { return judged_opening(t); }, job_.openings);
        read_pieces<Wall>(
            "wall", [this](const toml::table& t) { return judged_wall(t); }, job_.walls);
        read_the_trials();
        job_.stock = shop_.stock;
        if (const auto* stock = top_.table("stock", Need::optional, "[stock]"))
            job_.stock = read_stock(context_, *stock, shop_.stock);
        if (const auto* rates = top_.table("rates", Need::optional, "[rates]"))
            beside_.rates = read_rates(context_, *rates, shop_.beside.rates);
        if (const auto* packet = top_.table("packet", Need::optional, "[packet]"))
            job_.packet = read_packet(context_, *packet);
        if (pieces_ == 0)
            top_.missing({"opening"}, "there is nothing to bend", "a job needs at least one [[opening]] or [[wall]]");
        top_.finish();
        take_usual();
        return std::move(job_);
    }

    /// Every name that a board gives its material, and every name of a [[material]] table.
    const std::vector<Sourced<std::string>>& materials() const { return materials_; }

    /// What no sheet of the packet hangs on: the job's own, else the shop's.
    const Beside& beside() const { return beside_; }

    bool head_is_good() const { return head_is_good_; }

private:
    void read_head() {
        const auto* head = top_.table("job", Need::required, "[job]");
        if (head != nullptr) {
            read_units(context_, *head);
            job_.header = read_header(context_, *head);
        }
        read_the_saw();
        job_.printer = shop_.printer.value_or(default_printer());
        if (const auto* printer = top_.table("printer", Need::optional, "[printer]"))
            job_.printer = read_printer(context_, *printer, job_.printer, beside_);
        read_the_materials();
        head_is_good_ = head != nullptr && given(job_.saw.blade_diameter) && given(job_.saw.kerf) &&
                        context_.mistakes() == 0 && !shop_.faulty;
    }

    /// What is missing may be what could not be read in the shop file; then it is told there.
    void read_the_saw() {
        job_.saw = shop_.saw;
        const Need need = shop_.faulty ? Need::optional : Need::required;
        const bool shop_has_one = given(shop_.saw.blade_diameter) || given(shop_.saw.kerf);
        const auto* saw = top_.table("saw", shop_has_one ? Need::optional : need, "[saw]");
        if (saw != nullptr) {
            for (const auto& [key, node] : *saw) saw_keys_.emplace(key.str());
            job_.saw = read_saw(context_, *saw, shop_.saw, need);
            check_saw(context_, job_.saw);
        } else if (shop_has_one && !shop_.faulty) {
            miss_in_shop("blade_diameter", job_.saw.blade_diameter);
            miss_in_shop("kerf", job_.saw.kerf);
        }
    }

    void miss_in_shop(std::string_view key, const Sourced<Length>& value) {
        if (given(value)) return;
        top_.missing({"saw"}, std::string(key) + " is given neither here nor in the shop file",
                     "expected the line [saw] and " + std::string(key) + " below it");
    }

    void read_the_materials() {
        job_.materials = read_materials(context_, top_);
        const auto own = job_.materials;
        for (const Material& of_shop : shop_.materials) {
            const bool named = std::any_of(own.begin(), own.end(), [&](const Material& material) {
                return material.name.value == of_shop.name.value;
            });
            if (!named) job_.materials.push_back(of_shop);
        }
    }

    /// What the job's own tables leave out; what the pieces leave out stands in `taken` already.
    void take_usual() {
        std::vector<Taken> taken;
        const auto of_shop = [&](std::string_view key, const Sourced<Length>& value) {
            if (saw_keys_.contains(key) || !given(value)) return;
            taken.push_back({{"saw", "", std::string(key), {{value.value}}}, true});
        };
        of_shop("blade_diameter", job_.saw.blade_diameter);
        of_shop("kerf", job_.saw.kerf);
        if (!job_.printer.profile) taken.push_back({{"printer", "", "profile", {}}});
        const bool points =
            std::any_of(job_.openings.begin(), job_.openings.end(), [](const Opening& one) { return one.ordinates; }) ||
            std::any_of(job_.walls.begin(), job_.walls.end(), [](const Wall& one) { return one.ordinates; });
        if (points && job_.header.tape == Length())
            taken.push_back(
                {{"job", "", "tape", {{shop_.tape > Length() ? shop_.tape : usual_tape}}}, shop_.tape > Length()});
        job_.taken.insert(job_.taken.begin(), std::make_move_iterator(taken.begin()),
                          std::make_move_iterator(taken.end()));
    }

    /// A row of the job file must be of a board that it has; the shop's record is of many.
    void read_the_trials() {
        const auto used = [&](const Trial& trial) {
            return std::any_of(materials_.begin(), materials_.end(), [&](const Sourced<std::string>& material) {
                return material.value == trial.material.value;
            });
        };
        for (Trial& trial : read_trials(context_, top_, job_.saw.kerf)) {
            if (used(trial)) job_.trials.push_back(std::move(trial));
            else
                context_.error(trial.material.at, "no board of this job is of " + in_quotes(trial.material.value),
                               "a trial of another material tells nothing here: the shop file is the place for it");
        }
        std::copy_if(shop_.trials.begin(), shop_.trials.end(), std::back_inserter(job_.trials), used);
    }

    /// The job's own tape goes before the shop's.
    void note_tape(std::optional<Ordinates>& ordinates) const {
        if (!ordinates) return;
        for (const Length tape : {shop_.tape, job_.header.tape})
            if (tape > Length()) ordinates->tape = tape;
    }

    Opening judged_opening(const toml::table& table) {
        Opening opening = read_opening(context_, table);
        note_tape(opening.ordinates);
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
        note_tape(wall.ordinates);
        check_wall(context_, wall);
        if (wall.ordinates) check_ordinates(context_, *wall.ordinates);
        if (wall.form) check_form(context_, *wall.form, width_of(wall));
        check_board(context_, wall.board, job_.saw);
        return wall;
    }

    /// Reads every [[key]]; a piece with a mistake is told of and left out.
    template <class Piece, class Read>
    void read_pieces(std::string_view key, Read read, std::vector<Piece>& pieces) {
        const std::size_t told = context_.mistakes();
        const auto tables = top_.tables(key);
        if (!tables.empty() || context_.mistakes() > told) ++pieces_;
        for (const auto* table : tables) {
            if (++pieces_read_ > most_pieces) {
                context_.error(position(*table),
                               "the job has more than " + std::to_string(most_pieces) +
                                   " openings and walls: what follows is not read",
                               "split the house into several jobs, a storey or a kind of work each");
                return;
            }
            const std::size_t before = context_.mistakes();
            std::vector<Taken> taken;
            Piece piece = read(*table);
            note_material(piece);
            note_id(piece.id);
            for (Value& value : context_.usual_taken()) {
                value.piece = piece.id.value;
                taken.push_back({std::move(value)});
            }
            if (context_.mistakes() != before) continue;
            pieces.push_back(std::move(piece));
            std::move(taken.begin(), taken.end(), std::back_inserter(job_.taken));
        }
    }

    void note_material(const Opening& opening) { note(opening.liner.material); }
    void note_material(const Wall& wall) { note(wall.board.material); }
    void note(const Sourced<std::string>& material) {
        if (known(material)) materials_.push_back(material);
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
    const Shop& shop_;
    Job job_;
    Beside beside_;
    std::map<std::string, Position> ids_;
    std::set<std::string, std::less<>> saw_keys_;  ///< that the job file gives
    std::vector<Sourced<std::string>> materials_;
    int pieces_ = 0;
    std::size_t pieces_read_ = 0;
    bool head_is_good_ = false;
};

/// The names of all [[material]] tables, whatever else is wrong in them.
std::vector<std::string> own_materials(const toml::table& root, const Shop& shop) {
    std::vector<std::string> names;
    if (const auto* tables = root["material"].as_array())
        for (const auto& element : *tables)
            if (const auto* table = element.as_table())
                if (const auto name = (*table)["name"].value<std::string>()) names.push_back(*name);
    for (const Material& material : shop.materials) names.push_back(material.name.value);
    return names;
}

}  // namespace

KeyNotes notes_of_job(const std::string& text, bool with_saw_of_shop) {
    const Parsed parsed = parse(text);
    Context context(text, {});
    KeyNotes notes;
    context.notes = &notes;
    Shop shop;
    if (with_saw_of_shop) shop.saw.blade_diameter.value = shop.saw.kerf.value = finest;
    JobReader(context, parsed.root, shop).run();
    return notes;
}

Reading read_job(const Source& source, const Shop& shop) {
    Parsed parsed = parse(source.text);
    Reading reading;
    if (!parsed.usable) {
        reading.diagnostics = std::move(parsed.diagnostics);
        return reading;
    }

    Context context(source.text, std::move(parsed.broken_lines));
    JobReader reader(context, parsed.root, shop);
    reading.job = reader.run();
    reading.beside = reader.beside();
    reading.complete = reader.head_is_good();
    reading.materials = reader.materials();
    reading.own_materials = own_materials(parsed.root, shop);
    reading.diagnostics = all_told(std::move(parsed.diagnostics), context);
    if (reading.complete) reading.job.fingerprint = fingerprint(reading.job);
    return reading;
}

}  // namespace kerfpacket::job
