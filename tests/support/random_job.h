#pragma once
// Job files by chance: every shape, sensible and silly figures, so that whatever comes is either planned or refused
// with its reason. The same seed gives the same files.

#include <array>
#include <cstdint>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace kerfpacket::tests {

class RandomJobs {
public:
    explicit RandomJobs(std::uint64_t seed) : random_(seed) {}

    std::string next() {
        text_.str("");
        text_ << "[job]\nnumber = \"R-1\"\ntitle = \"by chance\"\nrevision = \"A\"\ndate = 2026-01-02\nunits = \""
              << (chance(0.8) ? "in" : "mm") << "\"\nlanguage = \"en\"\n[saw]\nblade_diameter = \"12 in\"\nkerf = \""
              << pick({"0.09 in", "0.118 in", "3.2 mm"}) << "\"\n";
        if (chance(0.4)) printer();
        if (chance(0.5)) text_ << "[stock]\nlengths = [\"12 ft\", \"28 ft\"]\n";
        if (chance(0.65)) opening();
        else wall();
        return text_.str();
    }

private:
    double between(double low, double high) {
        return low + (high - low) * (static_cast<double>(random_() % 100001) / 100000.0);
    }
    bool chance(double part) { return between(0, 1) < part; }
    std::string pick(const std::vector<std::string>& words) { return words[random_() % words.size()]; }
    /// Sixteenths mostly, as a tape gives them; sometimes the raw figure.
    std::string inches(double value) {
        std::ostringstream out;
        const double sixteenths = std::max(1.0, std::round(value * 16));
        out << (chance(0.9) ? sixteenths / 16 : value) << " in";
        return out.str();
    }
    void length(const char* key, double inch) { text_ << key << " = \"" << inches(inch) << "\"\n"; }

    void printer() {
        const std::vector<std::string> sheets = {"na_letter_8.5x11in", "iso_a4_210x297mm",      "na_legal_8.5x14in",
                                                 "na_ledger_11x17in",  "custom_shop_12x19.5in", "iso_a3_297x420mm"};
        const std::vector<std::string> rolls = {"custom_roll_1in", "custom_roll_62mm", "custom_roll_4in",
                                                "custom_roll_24in", "custom_roll_36in"};
        const std::string silly = "custom_small_100x150mm";
        text_ << "[printer]\n";
        if (chance(0.6)) text_ << "media = \"" << (chance(0.03) ? silly : pick(sheets)) << "\"\n";
        if (chance(0.3)) text_ << "strip_media = \"" << pick(rolls) << "\"\n";
        if (chance(0.15))
            text_ << "template_media = \"" << pick({"custom_roll_4in", "custom_roll_24in", "custom_roll_36in"})
                  << "\"\n";
        if (chance(0.3)) text_ << "adhesive = " << pick({"true", "false"}) << "\n";
        if (chance(0.2)) length("margin", between(0.1, 0.51));
    }

    /// How a template is spread over sheets.
    void tiles() {
        text_ << "[opening.template]\n";
        if (chance(0.7)) text_ << "sheets = \"" << pick({"grid", "along"}) << "\"\n";
        if (chance(0.5)) text_ << "half = " << pick({"true", "false"}) << "\n";
    }

    void opening() {
        const std::string shape = pick({"segmental", "semicircular", "elliptical", "three-centred", "pointed", "tudor",
                                        "parabolic", "catenary", "horseshoe", "eyebrow", "ordinates"});
        const double span = between(12, chance(0.1) ? 400 : 110);
        text_ << "[[opening]]\nid = \"A\"\nshape = \"" << shape << "\"\ndepth = \"5 in\"\n";
        text_ << "measured_to = \"" << pick({"wall", "finish"}) << "\"\n";
        if (shape == "ordinates") ordinates(span);
        else length("span", span);
        rise(shape, span);
        legs();
        // Several alike, of an opening in four. Drawn as a rake is, so that all other figures of a seed stay.
        if (const std::size_t drawn = text_.str().size(); drawn % 4 == 0)
            text_ << "quantity = " << 2 + drawn % 3 << "\n";
        board("opening.liner");
        if (chance(0.5)) casing();
        if (chance(0.4)) form("opening.form");
        if (chance(0.3)) tiles();
    }

    void rise(const std::string& shape, double span) {
        if (shape == "ordinates" || shape == "semicircular") return;
        if (shape == "pointed" && chance(0.5)) return length("radius", span * between(0.45, 2.5));
        const double most = shape == "horseshoe" ? 0.9 : shape == "pointed" ? 1.5 : shape == "eyebrow" ? 0.4 : 0.6;
        const double least = shape == "horseshoe" ? 0.45 : 0.04;
        length("rise", span * between(least, most));
        if ((shape == "three-centred" || shape == "tudor") && chance(0.4))
            length("side_radius", span * between(0.02, 0.5));
        if (shape == "tudor" && chance(0.4)) length("crown_radius", span * between(0.3, 2));
        if (shape == "eyebrow" && chance(0.4)) length("reverse_radius", span * between(0.05, 1.5));
    }

    void legs() {
        if (chance(0.4)) return;
        const double left = between(10, 90);
        if (chance(0.3)) text_ << "legs = [\"" << inches(left) << "\", \"" << inches(left + between(-3, 3)) << "\"]\n";
        else length("legs", left);
        if (chance(0.3)) text_ << "through_legs = true\n";
    }

    void ordinates(double span) {
        const int count = static_cast<int>(between(3, 30));
        const double height = span * between(0.05, 0.5);
        const double noise = chance(0.85) ? 1.0 / 16 : 1.5;
        text_ << "ordinates = [";
        for (int i = 0; i < count; ++i) {
            const double x = span * i / (count - 1);
            const double part = 2 * x / span - 1;
            const double y = height * (1 - part * part) + between(-noise, noise);
            text_ << (i > 0 ? ", " : "") << "[" << std::round(x * 16) / 16 << ", " << std::round(y * 16) / 16 << "]";
        }
        text_ << "]\n";
        if (chance(0.7)) text_ << "fit = \"" << pick({"arc", "ellipse", "fair"}) << "\"\n";
        if (chance(0.2)) text_ << "end_angles = [" << between(5, 80) << ", " << -between(5, 80) << "]\n";
    }

    void wall() {
        text_ << "[[wall]]\nid = \"B\"\nside = \"" << pick({"concave", "convex"}) << "\"\nmeasured_to = \""
              << pick({"wall", "finish"}) << "\"\n";
        const double chord = between(20, 300);
        switch (random_() % 3) {
            case 0:
                length("chord", chord);
                length("rise", chord * between(0.02, 0.55));
                break;
            case 1:
                length("radius", between(4, 400));
                text_ << "angle = " << between(5, 195) << "\n";  // seldom more than a half circle, which is refused
                break;
            default: ordinates(chord);
        }
        if (chance(0.5))
            text_ << "tails = [\"" << inches(between(0, 40)) << "\", \"" << inches(between(0, 40)) << "\"]\n";
        rake();
        board("wall.board");
        if (chance(0.3)) form("wall.form");
    }

    /// Of a wall in five. What it draws from is the text so far, so that all other figures of a seed stay.
    void rake() {
        const std::size_t drawn = text_.str().size();
        if (drawn % 5 != 0) return;
        text_ << "rake = [\"" << 5 + static_cast<int>(drawn % 4) << " in\", \"" << 8 + static_cast<int>(drawn % 7)
              << " in\"]\nclimbs = \"" << (drawn % 2 == 0 ? "left" : "right") << "\"\n";
        if (drawn % 3 == 0) text_ << "ends = [\"" << (drawn % 4 == 0 ? "level" : "square") << "\", \"plumb\"]\n";
    }

    void board(const std::string& table) {
        text_ << "[" << table << "]\nmaterial = \""
              << pick({"mdf", "mdf", "yellow-poplar", "red-oak", "white-pine", "hard-maple", "plywood"}) << "\"\n";
        const double thickness = between(0.25, 1.2);
        length("thickness", thickness);
        if (table == "wall.board") text_ << "width = \"5 in\"\n";
        if (chance(0.4)) depth(thickness);
        if (chance(0.4)) length("spacing", between(0.15, 1));
        else if (chance(0.1)) kerfs();
        if (chance(0.1))
            text_ << "too_deep = [[" << 1 + random_() % 60 << ", \"" << inches(thickness * between(0.3, 0.98))
                  << "\"]]\n";
        if (chance(0.5)) length("trim", between(0.1, 8));
        text_ << "zero = \"" << pick({"left", "right"}) << "\"\ntick = \"" << pick({"centre", "left", "right"})
              << "\"\n";
        if (chance(0.3)) text_ << "strip = \"" << pick({"face", "edge"}) << "\"\n";
        if (chance(0.15)) coupon(table);
    }

    /// A depth that leaves no web is refused: in one job of five it is asked for all the same.
    void depth(double thickness) {
        const std::string asked = pick({"half", "solve", "3/8 in", "5/16 in", "1/2 in"});
        const double inches = asked == "3/8 in" ? 0.375 : asked == "5/16 in" ? 0.3125 : asked == "1/2 in" ? 0.5 : 0;
        const bool silly = text_.str().size() % 5 == 0;
        text_ << "kerf_depth = \"" << (inches + 0.1 < thickness || silly ? asked : "half") << "\"\n";
    }

    /// By hand, now and then with a gap.
    void kerfs() {
        text_ << "kerfs = [";
        double at = between(1, 6);
        for (std::uint64_t i = 2 + random_() % 80; i > 0; --i) {
            text_ << inches_in_quotes(at) << (i > 1 ? ", " : "");
            at += chance(0.05) ? 1.25 : 0.5;
        }
        text_ << "]\n";
    }
    std::string inches_in_quotes(double value) { return "\"" + inches(value) + "\""; }

    /// Bent by somebody, sometimes further than can be.
    void coupon(const std::string& table) {
        text_ << "[" << table << ".coupon]\n";
        length("chord", between(6, 14));
        length("rise", between(0.2, 4));
        text_ << "held = \"" << pick({"disc", "ends", "centre"}) << "\"\nresult = \""
              << pick({"cracked", "held", "closed"})
              << "\"\nby = \"R. Field\"\nkerf_depth = \"5/16 in\"\nspacing = \"1/2 in\"\n"
              << (chance(0.8) ? "believed = true\n" : "");
    }

    void casing() {
        text_ << "[opening.casing]\n";
        length("width", between(1, 8));
        length("reveal", between(0.1, 0.5));
        if (chance(0.4)) text_ << "segments = " << 1 + random_() % 6 << "\n";
        if (chance(0.3)) length("board", between(3, 12));
    }

    void form(const std::string& table) {
        text_ << "[" << table << "]\n";
        if (chance(0.4)) length("step", between(1, 12));
        else if (chance(0.4))
            text_ << "stations = [\"" << inches(between(1, 10)) << "\", \"" << inches(between(11, 60)) << "\"]\n";
    }

    std::mt19937_64 random_;
    std::ostringstream text_;
};

}  // namespace kerfpacket::tests
