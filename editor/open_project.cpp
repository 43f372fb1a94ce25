#include "editor/open_project.h"

#include "editor/assets_path.h"
#include "engine/files/whole_file.h"
#include "model/project/project_json.h"

namespace editor {

engine::Result<model::Project> open_project(const std::filesystem::path& file) {
    const auto text = engine::read_whole_file(file, most_project_bytes);
    if (!text) return text.error();
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
