#include "cli/start.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

#include "cli/resources.h"
#include "cli/shop.h"
#include "cli/start/examples.h"
#include "cli/start/filled_sheets.h"
#include "cli/start/saved.h"
#include "cli/start/talk.h"
#include "cli/start/wrapped.h"
#include "cli/target.h"
#include "cli/trouble.h"
#include "disk/lock.h"
#include "measure/require.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_saved = 1'000'000;

/// Where the job goes: a new file, whose name says that it holds figures.
fs::path new_job_file(const StartChoice& choice) {
    fs::path file = choice.file;
    if (file.empty()) file = choice.example.empty() ? "job.toml" : choice.example + ".toml";
    if (file.extension() != ".toml")
        throw std::runtime_error(fmt::format("a job file ends in .toml: \"kerfpacket start {}.toml\"", file.string()));
    if (disk::look(file).kind != disk::Kind::nothing)
        throw std::runtime_error(fmt::format(
            "{} is there already and is never written over; name another, as in \"kerfpacket start OTHER.toml\"",
            file.string()));
    return file;
}

fs::path part_of(const fs::path& file) { return file.string() + ".part"; }

/// None where it cannot be read, which is told; without a shop file one that says nothing.
std::optional<job::Shop> shop_of(const StartChoice& choice, const fs::path& file, Console& console) {
    JobChoice job;
    job.file = file;
    job.shop = choice.shop;
    const fs::path path = shop_path(job);
    if (path.empty()) return job::Shop{};
    const auto source = job::load(path, job::shop_file);
    if (!source) {
        console.message(job::render({source.error()}, {path.string(), ""}));
        return {};
    }
    job::ShopReading reading = job::read_shop(*source);
    console.message(job::render(reading.diagnostics, *source));
    if (has_error(reading.diagnostics)) return {};
    return std::move(reading.shop);
}

/// What an earlier talk left for this file. Throws where something else has that name.
std::optional<Saved> left_over(const fs::path& part) {
    if (disk::look(part).kind == disk::Kind::nothing) return {};
    auto saved = read_saved(disk::must_read(part, most_saved));
    if (!saved)
        throw std::runtime_error(
            fmt::format("{} is there already and holds no answers of \"start\": move it away", part.string()));
    return saved;
}

void keep(const fs::path& part, const Talk& talk, const std::string& language) {
    disk::Filing filing;
    filing.add(part, saved_text(talk.answers(), language));
    // Should the disk not confirm it: the next answer is kept anew.
    (void)filing.commit();
}

Status write(const fs::path& file, const Talk& talk, const sheets::Kit& kit, Console& console) {
    disk::Filing filing;
    filing.add(file, talk.job_text(), disk::Over::nothing);
    put(filing, console);
    console.result(kit.words("start.written", {{"file", file.string()}}) + "\n");
    return Status::done;
}

/// Asks until there is no more to ask; each answer is kept as it is given.
Talk::State ask(Talk& talk, FilledSheets& sheets, const NextLine& next, const fs::path& part,
                const std::string& language, Console& console) {
    while (talk.state() == Talk::State::asking) {
        const std::size_t before = talk.answers().all().size();
        if (const auto given = sheets.answer(talk)) {
            const std::string prompt = talk.prompt();
            console.result(prompt + given->value + "\n" + wrapped(talk.hear(given->value, given->typed)));
        } else {
            console.result(talk.asking());
            const std::optional<std::string> line = next(talk.prompt());
            if (!line) return Talk::State::given_up;
            console.result(wrapped(talk.hear(*line)));
        }
        if (talk.answers().all().size() != before) keep(part, talk, language);
    }
    return talk.state();
}

std::string talk_question(const Talk& talk, const sheets::Kit& kit) {
    return kit.words("start.ask_" + std::string(talk.question().name));
}

/// What goes on where this talk was broken off.
std::string again(const StartChoice& choice, const fs::path& file) {
    std::string words;
    for (const std::string& sheet : choice.from) words += (words.empty() ? "--from " : "") + sheet + " ";
    return words + file.string();
}

void take_up(Talk& talk, const Saved& saved, const NextLine& next, const fs::path& part, const sheets::Kit& kit,
             Console& console) {
    const std::string count = std::to_string(saved.answers.size());
    const auto line = next(kit.words("start.goes_on", {{"part", part.string()}, {"n", count}}));
    const std::vector<std::string>& no = kit.words.list("start.no_words");
    if (!line || std::find(no.begin(), no.end(), *line) != no.end()) return;
    const std::size_t taken = talk.resume(saved.answers);
    console.result(kit.words("start.took_up", {{"n", std::to_string(taken)}}) + "\n");
}

Status example(const StartChoice& choice, const fs::path& file, Console& console, const fs::path& home) {
    const auto found = std::find_if(examples().begin(), examples().end(),
                                    [&](const Example& one) { return one.name == choice.example; });
    measure::require(found != examples().end(), "the command line knows the examples");
    const std::string language = choice.language.empty() ? "en" : choice.language;
    const Resources resources(home, language);
    const job::Shop none;
    const sheets::Kit kit = resources.kit();
    Talk talk(kit, none, language);
    tell_example(talk, *found, kit.words);
    return write(file, talk, kit, console);
}

/// "--from A.pdf B.pdf job.toml": the command line cannot tell where the sheets end.
StartChoice sorted(StartChoice choice) {
    if (choice.file.empty() && !choice.from.empty() && choice.from.back().ends_with(".toml")) {
        choice.file = choice.from.back();
        choice.from.pop_back();
        if (choice.from.empty())
            throw std::runtime_error("--from wants a filled field sheet, a PDF, before the job file");
    }
    return choice;
}

}  // namespace

Status start(const StartChoice& choice_typed, const NextLine& next, Console& console, const fs::path& home) {
    const StartChoice choice = sorted(choice_typed);
    const fs::path file = new_job_file(choice);
    const disk::Lock lock(file);
    if (!choice.example.empty()) return example(choice, file, console, home);
    const std::optional<job::Shop> shop = shop_of(choice, file, console);
    if (!shop) return Status::errors;
    FilledSheets sheets({choice.from.begin(), choice.from.end()});
    const fs::path part = part_of(file);
    const std::optional<Saved> saved = left_over(part);
    std::string language = choice.language.empty() && saved ? saved->language : choice.language;
    if (std::find(job::languages.begin(), job::languages.end(), language) == job::languages.end()) language = "en";
    const Resources resources(home, language);
    const sheets::Kit kit = resources.kit();
    for (const std::string& said : kit.words.list("start.intro", {{"part", part.string()}}))
        console.result(wrapped(said) + "\n");
    Talk talk(kit, *shop, language);
    console.result(wrapped(sheets.told(kit.words)));
    const std::vector<std::string> doubts = sheets.doubts(kit.words);
    for (const std::string& doubt : doubts) console.doubt(fmt::format("kerfpacket: caution: {}\n", doubt));
    talk.remark(sheets.remarks());
    talk.remark(doubts);
    if (saved) take_up(talk, *saved, next, part, kit, console);
    if (ask(talk, sheets, next, part, language, console) != Talk::State::finished) {
        const std::size_t given = talk.answers().all().size();
        console.message(given == 0 ? "\nkerfpacket: stopped; nothing was answered\n"
                                   : fmt::format("\nkerfpacket: stopped at the question \"{}\"; {} in {}, "
                                                 "\"kerfpacket start {}\" goes on\n",
                                                 talk_question(talk, kit), counted(given, "answer"), part.string(),
                                                 again(choice, file)));
        return Status::errors;
    }
    const Status status = write(file, talk, kit, console);
    if (!disk::remove(part))
        console.doubt(
            fmt::format("kerfpacket: caution: {} could not be removed; it is of no use any more\n", part.string()));
    return status;
}

}  // namespace kerfpacket::cli
