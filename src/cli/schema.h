#pragma once
// What a job file and a shop file may hold, for editors: JSON Schema, draft 2020-12.

#include <string>

#include "cli/console.h"

namespace kerfpacket::cli {

struct SchemaChoice {
    std::string file = "job";  ///< or "shop"
};

/// The schema of one of the two, made of what their readers ask for (`job/keys.h`). It tells keys, kinds of values,
/// words and what is needed; what depends on figures only the readers judge.
std::string schema_text(const std::string& file);

Status schema(const SchemaChoice& choice, Console& console);

}  // namespace kerfpacket::cli
