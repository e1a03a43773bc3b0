#pragma once
// What can be typed after "kerfpacket": commands, their arguments and options.

#include <filesystem>
#include <vector>

#include "cli/bid.h"
#include "cli/build.h"
#include "cli/check.h"
#include "cli/complete.h"
#include "cli/field_sheet.h"
#include "cli/labels.h"
#include "cli/manners.h"
#include "cli/outlines.h"
#include "cli/preview.h"
#include "cli/printer_check.h"
#include "cli/schema.h"
#include "cli/start.h"
#include "cli/stock.h"
#include "cli/stops.h"
#include "cli/verify.h"

namespace CLI {
class App;
}

namespace kerfpacket::cli {

/// Everything the command line can ask for; one command is chosen.
struct Choices {
    MannersChoice manners;
    std::vector<std::filesystem::path> jobs;  ///< of build and check
    BuildChoice build;
    CheckChoice check;
    PreviewChoice preview;
    PrinterCheckChoice printer_check;
    FieldSheetChoice field_sheet;
    OutlinesChoice outlines;
    StopsChoice stops;
    VerifyChoice verify;
    StockChoice stock;
    LabelsChoice labels;
    BidChoice bid;
    StartChoice start;
    SchemaChoice schema;
    CompleteChoice complete;
};

/// All commands; what is parsed goes into `choices`, which must outlive the parsing.
void add_commands(CLI::App& app, Choices& choices);

}  // namespace kerfpacket::cli
