#pragma once
// Variables of the environment for the length of a test.

#include <cstdlib>
#include <optional>
#include <string>

namespace kerfpacket::tests {

/// Sets a variable for the length of a test.
class Variable {
public:
    Variable(const char* name, const std::string& value) : name_(name) {
        if (const char* old = std::getenv(name)) old_ = old;  // NOLINT(concurrency-mt-unsafe): one thread
        setenv(name, value.c_str(), 1);                       // NOLINT(concurrency-mt-unsafe): one thread
    }
    ~Variable() {
        if (old_) setenv(name_, old_->c_str(), 1);  // NOLINT(concurrency-mt-unsafe): one thread
        else unsetenv(name_);                       // NOLINT(concurrency-mt-unsafe): one thread
    }
    Variable(const Variable&) = delete;
    Variable& operator=(const Variable&) = delete;

private:
    const char* name_;
    std::optional<std::string> old_;
};

}  // namespace kerfpacket::tests
