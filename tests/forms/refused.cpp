// Files that are no filled field sheet, each told by what happened to it.

#include <gtest/gtest.h>

#include <functional>

#include "filled.h"

namespace kerfpacket::tests {
namespace {

using Object = QPDFObjectHandle;

std::string refusal_of(const std::string& bytes) {
    const Folder folder;
    spill(folder / "f.pdf", bytes);
    try {
        const Started ran = start_from({folder / "f.pdf"}, folder / "f.toml");
        return "read: " + ran.out;
    } catch (const std::runtime_error& told) {
        EXPECT_FALSE(fs::exists(folder / "f.toml.part"));
        return told.what();
    }
}

const Values some{{"opening-1-span", "58¾"}};

/// A good filled form, changed.
std::string changed(const std::function<void(QPDF&)>& change) {
    const std::string good = filled(blank_form(), some);
    QPDF pdf;
    open(pdf, good);
    change(pdf);
    return written(pdf);
}

std::string by_qpdf(const std::vector<std::string>& options) {
    const Folder folder;
    spill(folder / "in.pdf", filled(blank_form(), some));
    std::vector<std::string> words{"qpdf"};
    words.insert(words.end(), options.begin(), options.end());
    for (std::string& word : words)
        if (word == "IN") word = (folder / "in.pdf").string();
    words.push_back((folder / "out.pdf").string());
    const Outcome ran = run_program(words);
    if (ran.status != 0) throw std::runtime_error(ran.err);
    return slurp(folder / "out.pdf");
}

void expect(const std::string& bytes, const std::string& words) {
    const std::string told = refusal_of(bytes);
    EXPECT_NE(told.find(words), std::string::npos) << told;
    EXPECT_NE(told.find("f.pdf"), std::string::npos) << told;
}

TEST(NoFilledSheet, PrintedOrFlattened) {
    expect(by_qpdf({"--flatten-annotations=all", "IN"}), "printed or flattened");
    const Folder folder;
    spill(folder / "f.pdf", filled(blank_form(), some));
    ASSERT_EQ(run_program({"pdftocairo", "-pdf", (folder / "f.pdf").string(), (folder / "p.pdf").string()}).status, 0);
    expect(slurp(folder / "p.pdf"), "printed or flattened");
}

TEST(NoFilledSheet, WrittenOverByHand) {
    const auto ink = [](QPDF& pdf) {
        for (Object field : fields_of(pdf))
            if (field.getKey("/T").getUTF8Value() != "kerfpacket") field.removeKey("/V");
        Object page = pdf.getAllPages().at(0);
        page.getKey("/Annots").appendItem(
            Object::parse("<< /Type /Annot /Subtype /Ink /Rect [9 9 99 99] /InkList [[9 9 99 99]] >>"));
    };
    expect(changed(ink), "by hand");
}

TEST(NoFilledSheet, EmptyOrWithoutAFigure) {
    expect(blank_form(), "is empty");
    expect(filled(blank_form(), {{"job-1-number", "7"}}), "tells of no piece");
}

TEST(NoFilledSheet, Merged) {
    expect(by_qpdf({"--empty", "--pages", "IN", "IN", "--"}), "merged");
    const auto without_marker = [](QPDF& pdf) {
        Object fields = pdf.getRoot().getKey("/AcroForm").getKey("/Fields");
        fields.eraseItem(0);
    };
    expect(changed(without_marker), "merged");
}

TEST(NoFilledSheet, ForeignOrLater) {
    const auto renamed = [](QPDF& pdf) {
        for (Object field : fields_of(pdf))
            field.replaceKey("/T", Object::newString("x" + field.getKey("/T").getUTF8Value()));
    };
    expect(changed(renamed), "no field sheet of kerfpacket");
    const auto later = [](QPDF& pdf) { fields_of(pdf)[0].replaceKey("/V", Object::newString("field-sheet 2 en-US")); };
    expect(changed(later), "later kerfpacket");
}

TEST(NoFilledSheet, LockedCutShortOrNoPdf) {
    expect(by_qpdf({"--encrypt", "secret", "owner", "256", "--", "IN"}), "password");
    const std::string good = filled(blank_form(), some);
    expect(good.substr(0, good.size() / 3), "");
    EXPECT_EQ(refusal_of(good.substr(0, good.size() / 3)).find("read: "), std::string::npos);
    expect("span 58 3/4", "is no PDF");
    const Folder folder;
    EXPECT_THROW(start_from({folder / "none.pdf"}, folder / "f.toml"), std::runtime_error);
    EXPECT_THROW(start_from({folder.path()}, folder / "f.toml"), std::runtime_error);
}

TEST(NoFilledSheet, TwoBoxesTicked) {
    const auto both = [](QPDF& pdf) {
        for (Object field : fields_of(pdf))
            if (field.getKey("/T").getUTF8Value() == "job-1-units")
                field.replaceKey("/V", Object::newName("/mm"));  // its box says in
    };
    expect(changed(both), "two boxes ticked");
}

// Made to be endless: a field within itself, nodes nested deeper than any form, more fields than any has.
TEST(NoFilledSheet, Hostile) {
    const auto within_itself = [](QPDF& pdf) {
        Object field = fields_of(pdf)[1];
        field.replaceKey("/Kids", Object::newArray({field}));
    };
    EXPECT_FALSE(refusal_of(changed(within_itself)).empty());
    const auto nested = [](QPDF& pdf) {
        Object below = fields_of(pdf)[1];
        for (int i = 0; i < 50; ++i) {
            Object above = pdf.makeIndirectObject(Object::parse("<< /T (n) >>"));
            above.replaceKey("/Kids", Object::newArray({below}));
            below = above;
        }
        pdf.getRoot().getKey("/AcroForm").getKey("/Fields").appendItem(below);
    };
    expect(changed(nested), "more than any form");
    const auto many = [](QPDF& pdf) {
        Object fields = pdf.getRoot().getKey("/AcroForm").getKey("/Fields");
        for (int i = 0; i < 20'001; ++i) fields.appendItem(Object::parse("<< /T (n) >>"));
    };
    expect(changed(many), "more than any form");
    const auto long_text = [](QPDF& pdf) {
        fields_of(pdf)[1].replaceKey("/V", pdf.newStream(std::string(30'000'000, 'x')));
    };
    expect(changed(long_text), "more than any form");
}

TEST(FilledSheet, IsReadHoweverItWasSaved) {
    const std::vector<std::vector<std::string>> ways{
        {"--object-streams=generate", "IN"},
        {"--linearize", "IN"},
        {"--encrypt", "", "owner", "256", "--", "IN"},
        {"--qdf", "IN"},
    };
    for (const auto& way : ways) {
        const Values read = values_of(output::read_form(by_qpdf(way), "f.pdf"));
        EXPECT_EQ(read.at("opening-1-span"), "58¾") << way.front();
    }
    const std::string good = filled(blank_form(), some);
    EXPECT_EQ(values_of(output::read_form("mail\r\n" + good, "f.pdf")).at("opening-1-span"), "58¾");
    const auto forgotten = [](QPDF& pdf) { pdf.getRoot().removeKey("/AcroForm"); };
    EXPECT_EQ(values_of(output::read_form(changed(forgotten), "f.pdf")).at("opening-1-span"), "58¾");
}

}  // namespace
}  // namespace kerfpacket::tests
