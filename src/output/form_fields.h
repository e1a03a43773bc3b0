#pragma once
// The walk over the fields of a form, inside this room only.

#include <set>
#include <string>
#include <vector>

#include "output/form_reader.h"
#include "output/qpdf.h"

namespace kerfpacket::output {

/// Walks down from the form, or, where some program copied the pages and forgot it, from the widgets on the pages:
/// never deeper, longer or twice over than a form is, so that none can be endless. Throws Refusal.
class FormFields {
public:
    explicit FormFields(QPDF& pdf);

    std::vector<FilledField> take() { return std::move(fields_); }
    bool drawn_over() const { return drawn_over_; }

private:
    /// What a field has of those above it.
    struct Above {
        std::string name;
        std::string tip;
        QPDFObjectHandle type;
        QPDFObjectHandle value;
    };
    void walk(const QPDFObjectHandle& list, const Above& above, int depth);
    void field(QPDFObjectHandle one, const Above& above, int depth);
    void look_at_pages(QPDF& pdf);
    void count();

    std::vector<FilledField> fields_;
    std::set<QPDFObjGen> met_;
    int seen_ = 0;
    bool drawn_over_ = false;
};

}  // namespace kerfpacket::output
