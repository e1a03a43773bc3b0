// Tables within a table.
#include "job/reader.h"

namespace kerfpacket::job {

const toml::table* TableReader::table(std::string_view key, Need need, std::string_view header) {
    note(key, need, "", {Takes::Kind::table});
    return read_table(key, need, header);
}

const toml::table* TableReader::read_table(std::string_view key, Need need, std::string_view header) {
    const toml::node* node = table_.get(key);
    const std::string name(header);
    if (node == nullptr) {
        if (need == Need::required)
            missing({key}, "the table " + name + " is missing", "expected the line " + name + " and its keys below it");
        return nullptr;
    }
    if (const auto* found = node->as_table()) return found;
    if (!context_.pass_over(*node))
        context_.error(position(*node), std::string(key) + " must be a table",
                       "expected the line " + name + " and its keys below it");
    return nullptr;
}

std::vector<const toml::table*> TableReader::one_or_more_tables(std::string_view key, std::string_view header) {
    note(key, Need::optional, "", {Takes::Kind::one_or_several});
    const toml::node* node = table_.get(key);
    if (node == nullptr || !node->is_array_of_tables()) {
        const auto* one = read_table(key, Need::optional, header);
        return one == nullptr ? std::vector<const toml::table*>{} : std::vector{one};
    }
    std::vector<const toml::table*> found;
    for (const auto& element : *node->as_array()) found.push_back(element.as_table());
    return found;
}

std::vector<const toml::table*> TableReader::tables(std::string_view key) {
    const auto* node = find(key, Need::optional, "", {Takes::Kind::tables});
    if (node == nullptr) return {};
    const std::string header = "[[" + std::string(key) + "]]";
    const std::string hint = "expected the line " + header + " and its keys below it";
    if (const auto* single = node->as_table()) {
        context_.error(position(*node), "write " + header + " in double brackets",
                       "there may be more than one of them");
        return {single};
    }
    std::vector<const toml::table*> found;
    const auto* list = node->as_array();
    if (list == nullptr) {
        context_.error(position(*node), std::string(key) + " must be a table", hint);
        return {};
    }
    for (const auto& element : *list) {
        if (const auto* table = element.as_table()) found.push_back(table);
        else context_.error(position(element), "this is no " + header + " table", hint);
    }
    return found;
}

}  // namespace kerfpacket::job
