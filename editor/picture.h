// A picture of a project's skeleton as a PNG file, drawn without any display.
#pragma once

#include "editor/reports.h"
#include "engine/render/camera.h"
#include "engine/render/image.h"
#include "engine/result.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <filesystem>
#include <optional>
#include <string_view>

namespace editor {

struct PictureLook {
    engine::Viewport size{.width = 1600, .height = 1000};  // pixels
    engine::ViewFrom from = engine::ViewFrom::corner;
    bool as_line_drawing = false;  // black on white, hidden lines left out
};

// "front", "left", "top" or "corner"; none for any other text.
std::optional<engine::ViewFrom> read_view_from(std::string_view text);

// The same inputs give the same picture. Error: as of OffscreenContext::create, or of the driver.
engine::Result<engine::Image> picture_of(const model::Project& project,
                                         const model::Catalogue& catalogue,
                                         const model::Resolved& resolved,
                                         const PictureLook& look);

// Resolves the project, draws it and writes the picture.
ExitStatus write_picture(const std::filesystem::path& project_file,
                         const std::filesystem::path& picture_file,
                         const PictureLook& look,
                         Streams streams);

}  // namespace editor
