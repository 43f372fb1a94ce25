#include "editor/open_project.h"

#include "editor/assets_path.h"
#include "engine/files/whole_file.h"
#include "model/project/project_json.h"

#include <array>
#include <optional>
#include <string_view>

namespace editor {
namespace {

// What files of other kinds begin with: PNG (ISO/IEC 15948), JPEG (ITU-T T.81: the markers SOI and
// the next), GIF, PDF (ISO 32000) and ZIP (its local file header), from memory.
struct KnownStart {
    std::string_view bytes;
    std::string_view words;
};

constexpr std::array<KnownStart, 5> known_starts{{{"\x89PNG", "a picture (PNG)"},
                                                  {"\xFF\xD8\xFF", "a picture (JPEG)"},
                                                  {"GIF8", "a picture (GIF)"},
                                                  {"%PDF", "a PDF document"},
                                                  {"PK\x03\x04", "a ZIP archive"}}};

std::optional<std::string> other_kind(std::string_view bytes) {
    for (const auto& [start, words] : known_starts) {
        if (bytes.substr(0, start.size()) == start) {
            return "this is " + std::string(words) + ", not a Barwright project";
        }
    }
    return std::nullopt;
}

}  // namespace

engine::Result<model::Project> open_project(const std::filesystem::path& file) {
    const auto text = engine::read_whole_file(file, most_project_bytes);
    if (!text) return text.error();
    if (const auto other = other_kind(*text)) {
        return engine::Error{engine::ErrorCode::bad_file, file.string(), *other};
    }
    auto project = model::read_project_json(*text);
    if (project) return project;
    auto error = project.error();
    error.where = error.where.empty() ? file.string() : file.string() + ", " + error.where;
    return error;
}

engine::Result<model::Catalogue> open_catalogue() {
    const auto assets = assets_path();
    if (!assets) return assets.error();
    return model::load_catalogue(*assets);
}

}  // namespace editor
