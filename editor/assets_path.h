// Where the program's own tables lie; fonts and shaders are compiled in.
#pragma once

#include "engine/result.h"

#include <filesystem>
#include <optional>

namespace editor {

// Where to look, first to last.
struct AssetPlaces {
    std::optional<std::filesystem::path> asked_for;  // BARWRIGHT_ASSETS: this folder or none
    std::filesystem::path executable;  // beside it or above it: assets or share/barwright/assets
};

AssetPlaces usual_asset_places();

// The folder that holds `catalogue`. Error: bad_file, with what to do.
engine::Result<std::filesystem::path> assets_path(const AssetPlaces& places = usual_asset_places());

}  // namespace editor
