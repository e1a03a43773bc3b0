#include "job/typed.h"

#include "job/writer.h"

namespace kerfpacket::job {

TypedJob typed_job(const std::vector<std::string>& heading, const std::vector<TypedLine>& lines) {
    Writer writer;
    for (const std::string& line : heading) writer.comment(line);
    TypedJob job;
    std::string header;
    for (const TypedLine& line : lines) {
        if (line.again || line.header != header) writer.header(line.header);
        header = line.header;
        job.line_of.push_back(writer.lines() + 1);
        writer.typed(line.key, line.value, line.comment);
    }
    job.text = writer.take().text;
    return job;
}

std::string toml_words(std::string_view words) { return canonical(Scalar(Words{std::string(words)})); }

}  // namespace kerfpacket::job
