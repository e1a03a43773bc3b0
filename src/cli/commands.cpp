#include "cli/commands.h"

#include <CLI/CLI.hpp>
#include <string>

#include "cli/start/examples.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

/// A packet and its like are files: "-" would be a file of that name.
CLI::Validator a_file() {
    return {[](std::string& name) {
                return name == "-" ? std::string("nothing is written to standard output: name a file") : std::string();
            },
            ""};
}

CLI::Validator counted_from_one(const std::string& what) {
    return {[what](std::string& text) {
                const bool digits = !text.empty() && text.find_first_not_of("0123456789") == std::string::npos;
                const bool zero = digits && text.find_first_not_of('0') == std::string::npos;
                return digits && !zero && text.size() <= 6 ? std::string() : what + " are numbered from 1";
            },
            ""};
}

void add_language(CLI::App& command, std::string& language, const std::string& help) {
    command.add_option("--language", language, help)
        ->check(CLI::IsMember(std::vector<std::string>(job::languages.begin(), job::languages.end())));
}

/// What goes with a job file, however many there are.
void add_job_file_options(CLI::App& command, JobChoice& job) {
    command.add_option("--shop", job.shop, "the shop file; else shop.toml beside the job, else the user's own");
    command.add_flag("--strict", job.strict,
                     "write nothing where one piece cannot be made; else the others are printed");
}

void add_job_file(CLI::App& command, JobChoice& job) {
    command.add_option("JOB", job.file, "the job file; - for standard input")->required();
    add_job_file_options(command, job);
}

void add_house(CLI::App& command, std::vector<fs::path>& jobs, JobChoice& job) {
    command.add_option("JOB", jobs, "the job file, or several that are bought for together; - for standard input")
        ->required();
    add_job_file_options(command, job);
}

void add_job_options(CLI::App& command, JobChoice& job) {
    add_job_file_options(command, job);
    command.add_option(
        "--media", job.print.media,
        "print on this paper instead of the job's own; a roll takes strips, and templates if wide enough");
    command.add_flag("--half", job.print.half,
                     "half templates, to flip about the centre line, though the job file says half = false");
    add_language(command, job.print.language, "language of the sheets instead of the job's own; messages stay English");
}

void add_jobs(CLI::App& command, std::vector<fs::path>& jobs, JobChoice& job) {
    command.add_option("JOB", jobs, "the job file, or several; - for standard input")->required();
    add_job_options(command, job);
}

void add_part(CLI::App& command, PartChoice& part) {
    const std::string again = "Print again, with the numbers and marks of the whole packet";
    command.add_option("--only", part.only, "only these sheets: strips,checklist")->delimiter(',')->group(again);
    command.add_option("--pages", part.pages, "only these pages: 7,9-12")->group(again);
    command.add_option("--from-cut", part.from_cut, "strips and checklists from the page with this cut on")
        ->check(counted_from_one("cuts"))
        ->group(again);
    command.add_option("--strip", part.strip, "the page with the strip of this number")
        ->check(counted_from_one("strips"))
        ->group(again);
}

void add_build(CLI::App& app, std::vector<fs::path>& jobs, BuildChoice& choice) {
    CLI::App* command = app.add_subcommand("build", "write the job packet as a PDF");
    add_jobs(*command, jobs, choice.job);
    add_part(*command, choice.part);
    command->add_option("--out", choice.out, "the PDF to write; else the job file's name with .pdf, beside it")
        ->check(a_file());
    command->add_flag("--open", choice.open, "show the packet when it is written, by xdg-open");
    command->add_flag("--force", choice.force,
                      "replace a file that is not a packet of ours; print a board with weak links");
}

void add_check(CLI::App& app, std::vector<fs::path>& jobs, CheckChoice& choice) {
    CLI::App* command = app.add_subcommand("check", "compute and report; write nothing");
    add_jobs(*command, jobs, choice.job);
    command->add_flag("--json", choice.json, "report for scripts: JSON, lengths in mm, angles in degrees");
}

void add_preview(CLI::App& app, PreviewChoice& choice) {
    CLI::App* command = app.add_subcommand("preview", "draw one picture a page");
    command->add_option("JOB", choice.job.file, "the job file; - for standard input")->required();
    add_job_options(*command, choice.job);
    command->add_option("--out", choice.out, "folder for the pictures; else the job file's name with -pages, beside it")
        ->check(a_file());
    CLI::Option* svg = command->add_flag("--svg", choice.svg, "SVG instead of PNG");
    command->add_option("--dpi", choice.dpi, "dots per inch of a PNG; else 100, and 36 on a contact sheet")
        ->check(CLI::Range(10.0, 2400.0));
    command->add_flag("--contact-sheet", choice.contact_sheet, "all pages small on one PNG, contact-sheet.png")
        ->excludes(svg);
    command->add_flag("--force", choice.force, "replace pictures that are there already");
}

void add_printer_check(CLI::App& app, PrinterCheckChoice& choice) {
    CLI::App* command =
        app.add_subcommand("printer-check", "write the page a printer is measured by, or store what was measured");
    CLI::Option* media = command->add_option("--media", choice.media, "the paper of the page")->capture_default_str();
    command->add_option("--units", choice.units, "of the measured bars; else those in the paper's name")
        ->check(CLI::IsMember({"in", "mm"}));
    add_language(*command, choice.language, "language of the page");
    command->add_option("--out", choice.out, "the PDF to write")->capture_default_str()->check(a_file());
    CLI::Option* profile =
        command->add_option("--profile", choice.profile, "store what was measured under this name; write no page");
    command->add_option("--first", choice.first, "edge of the page that came out first")
        ->check(CLI::IsMember({"top", "bottom", "left", "right"}));
    command->add_option("--level", choice.level, "level bar as measured, as in \"6 31/32 in\"");
    command->add_option("--upright", choice.upright, "upright bar as measured");
    command->add_option("--diagonals", choice.diagonals, "A to C and B to D as measured, with a comma between them");
    command->add_option("--margins", choice.margins, "lost at top, bottom, left, right; else 1/4 in each");
    CLI::Option* labels =
        command->add_option("--labels", choice.labels, "the label sheet of this job or shop file instead of a page")
            ->excludes(media)
            ->excludes(profile);
    command->add_option("--first-label", choice.first_label, "its mark on label 1: from the left edge, from the top")
        ->needs(labels);
    command->add_option("--last-label", choice.last_label, "the same of the last label")->needs(labels);
    command->add_flag("--force", choice.force, "replace a profile, or a file that is not ours");
}

void add_field_sheet(CLI::App& app, FieldSheetChoice& choice) {
    CLI::App* command = app.add_subcommand("field-sheet", "write blank forms to measure on site with");
    command->add_option("SHAPE", choice.shape, "arch, wall or ordinates; else all three")
        ->check(CLI::IsMember({"arch", "wall", "ordinates"}));
    command->add_option("--media", choice.media, "the paper")->capture_default_str();
    command->add_option("--units", choice.units, "of the blanks; else those in the paper's name")
        ->check(CLI::IsMember({"in", "mm"}));
    add_language(*command, choice.language, "language of the forms");
    command->add_option("--out", choice.out, "the PDF to write")->capture_default_str()->check(a_file());
    command->add_flag("--force", choice.force, "replace a file that is not ours");
}

void add_stops(CLI::App& app, StopsChoice& choice) {
    CLI::App* command = app.add_subcommand("stops", "tell where the kerfs are cut, as a table for a digital stop: CSV");
    add_job_file(*command, choice.job);
    command
        ->add_option("--blade", choice.blade, "the side of the kerf that is told: near zero, far from it, its middle")
        ->check(CLI::IsMember(blade_sides()))
        ->capture_default_str();
    command->add_option("--piece", choice.piece, "this piece alone; else all");
}

void add_outlines(CLI::App& app, OutlinesChoice& choice) {
    CLI::App* command =
        app.add_subcommand("outlines", "draw blanks, casing segments, ribs and arches at true size: DXF R12");
    add_job_file(*command, choice.job);
    command->add_flag("--svg", choice.svg, "SVG instead of DXF");
    command->add_option("--piece", choice.piece, "this piece alone; else all");
}

void add_verify(CLI::App& app, VerifyChoice& choice) {
    CLI::App* command = app.add_subcommand("verify", "tell whether a filed packet is what was once written");
    command->add_option("PACKET", choice.packet, "the packet")->required();
    CLI::Option* job = command->add_option("JOB", choice.job.file, "a job file: would it still print this?");
    command->add_option("--shop", choice.job.shop, "its shop file; else as build takes it")->needs(job);
}

void add_stock(CLI::App& app, StockChoice& choice) {
    CLI::App* command =
        app.add_subcommand("stock", "tell what to buy for one or more jobs, and what to cut from each board");
    command->add_option("JOB", choice.jobs, "the job files; several are planned together")->required();
    command->add_option("--shop", choice.job.shop, "the shop file; else as build takes it");
    CLI::Option* json = command->add_flag("--json", choice.json, "for scripts: JSON, lengths in mm");
    command->add_flag("--csv", choice.csv, "for a table: a line for each cut, lengths in mm")->excludes(json);
}

void add_labels(CLI::App& app, LabelsChoice& choice) {
    CLI::App* command =
        app.add_subcommand("labels", "write a label for every blank, casing segment, rib and offcut, as a PDF");
    add_house(*command, choice.jobs, choice.job);
    add_language(*command, choice.job.print.language, "language of the labels instead of the job's own");
    command
        ->add_option("--out", choice.out,
                     "the PDF to write; else the job file's name with -labels.pdf, beside it; of several jobs needed")
        ->check(a_file());
    command->add_option("--labels-from", choice.from, "the first label that is free on a half-used sheet")
        ->check(counted_from_one("labels"));
    command->add_flag("--force", choice.force, "replace a file that is not ours");
}

void add_bid(CLI::App& app, BidChoice& choice) {
    CLI::App* command = app.add_subcommand("bid", "write what jobs take, at the shop's rates or with blanks: a PDF");
    add_house(*command, choice.jobs, choice.job);
    add_language(*command, choice.job.print.language, "language of the sheet instead of the job's own");
    CLI::Option* out =
        command
            ->add_option("--out", choice.out,
                         "the PDF to write; else the job file's name with -bid.pdf, beside it; of several jobs needed")
            ->check(a_file());
    CLI::Option* force = command->add_flag("--force", choice.force, "replace a file that is not ours");
    command->add_flag("--json", choice.json, "for scripts: JSON, lengths in mm; write nothing")
        ->excludes(out)
        ->excludes(force);
}

void add_start(CLI::App& app, StartChoice& choice) {
    CLI::App* command = app.add_subcommand("start", "ask for the measurements and write a job file");
    command->add_option("FILE", choice.file, "the job file to write, NAME.toml; else job.toml")->check(a_file());
    add_language(*command, choice.language, "language of the talk and of the sheets");
    command->add_option("--shop", choice.shop,
                        "the shop file, whose answers are offered; else as every command finds it");
    CLI::Option* from = command->add_option("--from", choice.from,
                                            "filled field sheets, saved by any viewer: what they say is not asked");
    std::vector<std::string> names;
    for (const Example& example : examples()) names.emplace_back(example.name);
    command->add_option("--example", choice.example, "ask nothing: write a worked example of this shape, or of a wall")
        ->check(CLI::IsMember(names))
        ->excludes(from);
}

void add_schema(CLI::App& app, SchemaChoice& choice) {
    CLI::App* command = app.add_subcommand("schema", "write the JSON Schema of a job file or a shop file, for editors");
    command->add_option("FILE", choice.file, "job or shop")
        ->check(CLI::IsMember({"job", "shop"}))
        ->capture_default_str();
}

void add_complete(CLI::App& app, CompleteChoice& choice) {
    CLI::App* command = app.add_subcommand("complete", "tell what may stand next on a command line, for shells");
    command->add_option("WORDS", choice.words, "behind --, the words so far, the last one as far as it is typed");
}

}  // namespace

void add_commands(CLI::App& app, Choices& choices) {
    add_build(app, choices.jobs, choices.build);
    add_check(app, choices.jobs, choices.check);
    add_preview(app, choices.preview);
    add_printer_check(app, choices.printer_check);
    add_field_sheet(app, choices.field_sheet);
    add_outlines(app, choices.outlines);
    add_stops(app, choices.stops);
    add_verify(app, choices.verify);
    add_stock(app, choices.stock);
    add_labels(app, choices.labels);
    add_bid(app, choices.bid);
    add_start(app, choices.start);
    app.add_subcommand("media", "list the paper sizes that are known");
    add_schema(app, choices.schema);
    add_complete(app, choices.complete);
    add_manners(app, choices.manners);
}

}  // namespace kerfpacket::cli
