#include "print/crafted.h"

#include <fmt/format.h>

#include "print/tamper.h"

namespace kerfpacket::tests {

std::string pdf_of(const std::vector<std::string>& objects, const std::string& trailer) {
    std::string pdf = "%PDF-1.7\n", table;
    int number = 0;
    for (const std::string& object : objects) {
        table += fmt::format("{:010} 00000 n \n", pdf.size());
        pdf += fmt::format("{} 0 obj\n", ++number);
        pdf += object;
        pdf += "\nendobj\n";
    }
    const std::size_t at = pdf.size(), count = objects.size() + 1;
    return pdf + fmt::format("xref\n0 {}\n0000000000 65535 f \n", count) + table +
           fmt::format("trailer\n<< /Size {} /Root 1 0 R {} >>\nstartxref\n{}\n%%EOF\n", count, trailer, at);
}

std::string stream(const std::string& keys, const std::string& bytes) {
    return fmt::format("<< {} /Length {} >>\nstream\n", keys, bytes.size()) + bytes + "\nendstream";
}

std::string packet_of(const std::vector<std::pair<std::string, std::string>>& files) {
    std::vector<std::string> objects = {"", "<< /Producer (kerfpacket " KERFPACKET_VERSION ") >>"};
    std::string all;
    for (const auto& [name, file] : files) {
        objects.push_back(file);
        objects.push_back(
            fmt::format("<< /Type /Filespec /F ({0}) /UF ({0}) /EF << /F {1} 0 R >> >>", name, objects.size()));
        all += fmt::format(" {} 0 R", objects.size());
    }
    objects[0] = fmt::format("<< /Type /Catalog /AF [{}] >>", all);
    return resealed(pdf_of(objects, "/Info 2 0 R"));
}

std::string with_object_stream(const std::string& keys, const std::string& packed) {
    std::string pdf = "%PDF-1.7\n";
    const std::size_t objects = pdf.size();
    pdf += "1 0 obj\n" + stream("/Type /ObjStm /N 1 /First 5 " + keys, packed) + "\nendobj\n";
    const std::size_t at = pdf.size();
    const auto row = [](int kind, std::size_t place, int index) {
        std::string bytes(1, static_cast<char>(kind));
        for (int shift = 24; shift >= 0; shift -= 8) bytes += static_cast<char>((place >> shift) & 0xFFU);
        return bytes + static_cast<char>(index);
    };
    const std::string table = row(0, 0, 0) + row(1, objects, 0) + row(1, at, 0) + row(2, 1, 0);
    pdf += "2 0 obj\n" + stream("/Type /XRef /Size 4 /W [1 4 1] /Root 3 0 R", table) + "\nendobj\n";
    return pdf + fmt::format("startxref\n{}\n%%EOF\n", at);
}

}  // namespace kerfpacket::tests
