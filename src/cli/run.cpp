#include "cli/run.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <functional>
#include <new>
#include <sstream>
#include <string_view>

#include <sys/auxv.h>
#include <unistd.h>

#include "cli/commands.h"
#include "cli/several.h"
#include "disk/process.h"
#include "job/media.h"
#include "job/text.h"
#include "measure/near_miss.h"
#include "measure/require.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

Status list_media(Console& console) {
    for (const job::Media& media : job::all_media())
        console.result(fmt::format("{:<29} {}\n", media.name, media.plain_name));
    for (const std::string& line : job::custom_media_help()) console.result(line + "\n");
    return Status::done;
}

/// What is said of a failure that nobody below has told.
Status failures_told(Console& console, const std::function<Status()>& work);

Status on_each(const std::vector<fs::path>& jobs, Console& console,
               const std::function<Status(const fs::path&, Console&)>& one) {
    if (jobs.size() == 1) return one(jobs.front(), console);
    return several(
        jobs, [&](const fs::path& job, Console& own) { return failures_told(own, [&] { return one(job, own); }); },
        console);
}

Status build_each(const Choices& choices, Console& console, const fs::path& home) {
    if (choices.jobs.size() > 1 && !choices.build.out.empty())
        throw std::runtime_error("--out names one packet; of several jobs each is written beside its job file");
    return on_each(choices.jobs, console, [&](const fs::path& job, Console& own) {
        BuildChoice choice = choices.build;
        choice.job.file = job;
        return build(choice, own, home);
    });
}

Status check_each(const Choices& choices, Console& console, const fs::path& home) {
    if (choices.jobs.size() > 1 && choices.check.json)
        throw std::runtime_error("--json tells of one job; run it once for each");
    return on_each(choices.jobs, console, [&](const fs::path& job, Console& own) {
        CheckChoice choice = choices.check;
        choice.job.file = job;
        return check(choice, own, home);
    });
}

Status dispatch(const CLI::App& app, const Choices& choices, Console& console, const fs::path& home) {
    if (app.got_subcommand("build")) return build_each(choices, console, home);
    if (app.got_subcommand("check")) return check_each(choices, console, home);
    if (app.got_subcommand("preview")) return preview(choices.preview, console, home);
    if (app.got_subcommand("field-sheet")) return field_sheet(choices.field_sheet, console, home);
    if (app.got_subcommand("printer-check")) return printer_check(choices.printer_check, console, home);
    if (app.got_subcommand("outlines")) return outlines(choices.outlines, console);
    if (app.got_subcommand("stops")) return stops(choices.stops, console);
    if (app.got_subcommand("verify")) return verify(choices.verify, console, home);
    if (app.got_subcommand("stock")) return stock(choices.stock, console, home);
    if (app.got_subcommand("labels")) return labels(choices.labels, console, home);
    if (app.got_subcommand("bid")) return bid(choices.bid, console, home);
    if (app.got_subcommand("start"))
        return start(choices.start, at_terminal() ? terminal_lines() : plain_lines(console), console, home);
    if (app.got_subcommand("schema")) return schema(choices.schema, console);
    if (app.got_subcommand("complete")) return complete(app, choices.complete, console, home);
    return list_media(console);
}

/// What to say of a first word that is no command; empty where it is one, or an option.
std::string no_command(const CLI::App& app, const std::vector<std::string>& arguments) {
    if (arguments.empty() || arguments.front().starts_with('-')) return "";
    const std::string& word = arguments.front();
    std::vector<std::string> names;
    for (const CLI::App* command : app.get_subcommands({})) names.push_back(command->get_name());
    if (std::find(names.begin(), names.end(), word) != names.end()) return "";
    std::string hint;
    const std::string near = measure::near_miss(word, {names.begin(), names.end()});
    if (word == "help")
        hint = R"("kerfpacket --help" and, of one command, "kerfpacket build --help" tell the options)";
    else if (word == "new" || word == "init" || word == "create")
        hint = "\"kerfpacket start\" asks for the measurements and writes a job file";
    else if (word == "print") hint = "\"kerfpacket build JOB\" writes the PDF that is printed";
    else if (word.ends_with(".toml")) hint = "a command comes first: did you mean \"kerfpacket build JOB\"?";
    else if (!near.empty()) hint = fmt::format("did you mean {}?", near);
    return fmt::format("kerfpacket: there is no command {}{}{}\nthe commands are {}\n", job::in_quotes(word),
                       hint.empty() ? "" : "; ", hint, fmt::join(names, ", "));
}

/// What to say of an argument with a line break in it; empty where there is none. A message that names such a file
/// would fall apart, and its second half could pass for another message.
std::string broken_line(const std::vector<std::string>& arguments) {
    const auto found = std::find_if(arguments.begin(), arguments.end(),
                                    [](const std::string& one) { return one.find('\n') != std::string::npos; });
    if (found == arguments.end()) return "";
    return fmt::format("kerfpacket: a line break stands in {}; give the file a name of one line\n",
                       job::in_quotes(*found));
}

Status parse_and_run(const std::vector<std::string>& arguments, Console& console, const fs::path& home) {
    if (const std::string told = broken_line(arguments); !told.empty()) {
        console.message(told);
        return Status::errors;
    }
    CLI::App app("kerfpacket: from a job file to the packet that a kerf-bent board is cut by", "kerfpacket");
    app.set_version_flag("--version", "kerfpacket " KERFPACKET_VERSION);
    app.require_subcommand(1);
    Choices choices;
    add_commands(app, choices);
    if (const std::string told = no_command(app, arguments); !told.empty()) {
        console.message(told);
        return Status::errors;
    }
    try {
        app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
    } catch (const CLI::ParseError& stop) {
        // Help and version come this way too, with code 0.
        std::ostringstream out, err;
        const bool answered = app.exit(stop, out, err) == 0;
        console.result(out.str());
        console.message(err.str() + (answered ? "" : near_option(app, arguments)));
        return answered ? Status::done : Status::errors;
    }
    console.behave(manners(choices.manners, console.watched()));
    return dispatch(app, choices, console, home);
}

/// "while laying out the sheets: ", or nothing before anything was begun.
std::string where(const Console& console) {
    const std::string doing = console.doing();
    return doing.empty() ? "" : "while " + doing + ": ";
}

Status failures_told(Console& console, const std::function<Status()>& work) {
    try {
        return work();
    } catch (const measure::Bug& bug) {
        console.message(
            fmt::format("kerfpacket: {}{}\nThis is a mistake in kerfpacket, not in the job. Please report "
                        "it, with the job file.\n",
                        where(console), bug.what()));
    } catch (const std::bad_alloc&) {
        console.message(fmt::format(
            "kerfpacket: {}out of memory: no more than {} MB are used for a job; split it, print it on larger "
            "paper or on a roll, or close other programs\n",
            where(console), disk::most_to_build >> 20U));
    } catch (const std::exception& failure) {
        console.message(fmt::format("kerfpacket: {}{}\n", where(console), failure.what()));
    }
    return Status::errors;
}

}  // namespace

int run(const std::vector<std::string>& arguments, Console& console, const fs::path& home) try {
    console.behave(manners({}, console.watched()));
    return static_cast<int>(
        failures_told(console, [&] { return console.flush(parse_and_run(arguments, console, home)); }));
} catch (...) {
    // Not even memory to tell of it: what is said needs none.
    constexpr std::string_view told = "kerfpacket: out of memory\n";
    [[maybe_unused]] const auto written = ::write(STDERR_FILENO, told.data(), told.size());
    return static_cast<int>(Status::errors);
}

fs::path program_folder() {
    std::error_code unknown;
    fs::path program = fs::read_symlink("/proc/self/exe", unknown);
    // Where /proc is not mounted, as in a bare chroot, by what the kernel was asked to run: an address, as a number.
    if (unknown) {
        const auto* file = reinterpret_cast<const char*>(::getauxval(AT_EXECFN));  // NOLINT(performance-no-int-to-ptr)
        program = fs::canonical(file, unknown);
    }
    return program.parent_path();
}

}  // namespace kerfpacket::cli
