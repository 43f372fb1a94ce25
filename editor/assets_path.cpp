#include "editor/assets_path.h"

#include <array>
#include <cstdlib>
#include <system_error>

namespace editor {
namespace {

namespace fs = std::filesystem;

bool holds_a_catalogue(const fs::path& assets) {
    std::error_code ignored;
    return fs::is_directory(assets / "catalogue", ignored);
}

std::optional<fs::path> assets_at_or_above(fs::path folder) {
    constexpr std::array<const char*, 2> usual_names{"assets", "share/barwright/assets"};
    while (true) {
        for (const auto* name : usual_names) {
            if (holds_a_catalogue(folder / name)) return folder / name;
        }
        if (!folder.has_relative_path()) return std::nullopt;
        folder = folder.parent_path();
    }
}

engine::Error nothing_found(std::string where, std::string message) {
    return {.code = engine::ErrorCode::bad_file,
            .where = std::move(where),
            .message = std::move(message)};
}

}  // namespace

AssetPlaces usual_asset_places() {
    AssetPlaces places;
    if (const char* asked_for = std::getenv("BARWRIGHT_ASSETS")) places.asked_for = asked_for;
    std::error_code ignored;
    places.executable = fs::read_symlink("/proc/self/exe", ignored);
    return places;
}

engine::Result<fs::path> assets_path(const AssetPlaces& places) {
    if (places.asked_for) {
        if (holds_a_catalogue(*places.asked_for)) return *places.asked_for;
        return nothing_found("BARWRIGHT_ASSETS",
                             "no folder catalogue in " + places.asked_for->string() +
                                 "; set it to the program's folder assets, or unset it");
    }
    if (const auto beside = assets_at_or_above(places.executable.parent_path())) return *beside;
    return nothing_found(
        "assets",
        "the tables of sections and fasteners are not near the program; put its folder assets "
        "beside it, or set BARWRIGHT_ASSETS to where that folder lies");
}

}  // namespace editor
