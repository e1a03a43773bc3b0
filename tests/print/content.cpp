#include "print/content.h"

#include "output/qpdf.h"

#include <algorithm>
#include <qpdf/QPDFPageDocumentHelper.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <stdexcept>

namespace kerfpacket::tests {
namespace {

using namespace measure::literals;

struct State {
    double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;  ///< user space to page
    double pen = 1;
};

/// Follows the path and graphics state operators of ISO 32000-1, 8.4 and 8.5; text is passed over.
class Reader : public QPDFObjectHandle::ParserCallbacks {
public:
    void handleObject(QPDFObjectHandle object, size_t /*offset*/, size_t /*length*/) override {
        if (!object.isOperator()) {
            operands_.push_back(object);
            return;
        }
        operate(object.getOperatorValue());
        operands_.clear();
    }
    void handleEOF() override {}

    std::vector<Mark> marks;

private:
    double number(std::size_t i) { return operands_.at(i).getNumericValue(); }

    Point at(double x, double y) const {
        const State& s = state_.back();
        return {Length::points(s.a * x + s.c * y + s.e), Length::points(s.b * x + s.d * y + s.f)};
    }

    void concat() {
        State& s = state_.back();
        const State m{number(0), number(1), number(2), number(3), number(4), number(5), s.pen};
        s = {m.a * s.a + m.b * s.c,
             m.a * s.b + m.b * s.d,
             m.c * s.a + m.d * s.c,
             m.c * s.b + m.d * s.d,
             m.e * s.a + m.f * s.c + s.e,
             m.e * s.b + m.f * s.d + s.f,
             s.pen};
    }

    void operate(const std::string& op) {
        if (op == "q") state_.push_back(state_.back());
        else if (op == "Q") state_.pop_back();
        else if (op == "cm") concat();
        else if (op == "w") state_.back().pen = number(0);
        else if (op == "m") path_.push_back({at(number(0), number(1))});
        else if (op == "l") path_.back().push_back(at(number(0), number(1)));
        else if (op == "c") path_.back().push_back(at(number(4), number(5)));
        else if (op == "v" || op == "y") path_.back().push_back(at(number(2), number(3)));
        else if (op == "h") path_.back().push_back(path_.back().front());
        else if (op == "re") rectangle();
        else if (op == "S" || op == "s") paint(true, false);
        else if (op == "f" || op == "F" || op == "f*") paint(false, true);
        else if (op == "B" || op == "B*" || op == "b" || op == "b*") paint(true, true);
        else if (op == "n") path_.clear();
    }

    void rectangle() {
        const double x = number(0), y = number(1), w = number(2), h = number(3);
        path_.push_back({at(x, y), at(x + w, y), at(x + w, y + h), at(x, y + h), at(x, y)});
    }

    void paint(bool stroked, bool filled) {
        const State& s = state_.back();
        const double scale = std::sqrt(std::abs(s.a * s.d - s.b * s.c));
        for (auto& points : path_)
            marks.push_back({std::move(points), stroked ? Length::points(s.pen * scale) : 0_mm, filled});
        path_.clear();
    }

    std::vector<State> state_{State{}};
    std::vector<QPDFObjectHandle> operands_;
    std::vector<std::vector<Point>> path_;
};

bool near(Length a, Length b, Length within = 0.001_mm) { return measure::abs(a - b) <= within; }

PrintedStrip strip_in(const PrintedPage& page, const Rect& outline) {
    PrintedStrip strip{page.number, outline, {}};
    for (const Mark& mark : page.marks) {
        const Rect box = mark.bounds();
        if (near(mark.width, 0.5_pt) && near(box.width(), 0_mm) && near(box.low.y, outline.low.y) &&
            near(box.height(), 12_pt) && outline.contains(box.low))
            strip.ticks.push_back(box.low.x);
    }
    std::sort(strip.ticks.begin(), strip.ticks.end());
    return strip;
}

}  // namespace

Rect Mark::bounds() const {
    Rect box{points.front(), points.front()};
    for (const Point& point : points) box = geom::united(box, {point, point});
    return box;
}

std::vector<PrintedPage> read_content(const std::filesystem::path& pdf) {
    QPDF file;
    file.processFile(pdf.c_str());
    std::vector<PrintedPage> pages;
    for (QPDFPageObjectHelper& page : QPDFPageDocumentHelper(file).getAllPages()) {
        if (page.getAttribute("/Rotate", false).isInteger()) throw std::runtime_error("a page is turned by /Rotate");
        const auto box = page.getMediaBox().getArrayAsRectangle();
        Reader reader;
        page.parseContents(&reader);
        pages.push_back(
            {static_cast<int>(pages.size()) + 1,
             {{Length::points(box.llx), Length::points(box.lly)}, {Length::points(box.urx), Length::points(box.ury)}},
             std::move(reader.marks)});
    }
    return pages;
}

std::vector<PrintedStrip> printed_strips(const std::vector<PrintedPage>& pages) {
    std::vector<PrintedStrip> all;
    for (const PrintedPage& page : pages) {
        std::vector<PrintedStrip> here;
        for (const Mark& mark : page.marks)
            if (near(mark.width, 0.7_pt) && mark.points.size() == 5 &&
                (near(mark.bounds().height(), 72_pt) || near(mark.bounds().height(), 62.5_pt)))
                here.push_back(strip_in(page, mark.bounds()));
        std::sort(here.begin(), here.end(),
                  [](const PrintedStrip& a, const PrintedStrip& b) { return a.outline.low.y > b.outline.low.y; });
        all.insert(all.end(), here.begin(), here.end());
    }
    return all;
}

}  // namespace kerfpacket::tests
