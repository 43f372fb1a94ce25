#include "engine/files/scan_mesh.h"

#include "engine/files/scan_readers.h"
#include "engine/files/whole_file.h"

#include <algorithm>
#include <new>
#include <string>

namespace engine {
namespace {

namespace fs = std::filesystem;

using Reader = bool (*)(ScanReading&);

// What comes behind the last point, in small letters; the whole name where there is none.
std::string ending_of(std::string_view name) {
    std::string ending{name.substr(name.rfind('.') + 1)};  // npos + 1 is 0
    for (char& c : ending)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return ending;
}

Reader reader_by_content(std::string_view bytes) {
    if (is_glb(bytes)) return read_glb;
    if (is_ply(bytes)) return read_ply;
    if (is_binary_stl(bytes) || is_ascii_stl(bytes)) return read_stl;
    if (is_obj(bytes)) return read_obj;
    return nullptr;
}

Reader reader_by_ending(std::string_view ending) {
    if (ending == "stl") return read_stl;
    if (ending == "ply") return read_ply;
    if (ending == "obj") return read_obj;
    if (ending == "glb") return read_glb;
    return nullptr;
}

Error no_mesh(std::string_view bytes, std::string_view ending) {
    const auto first = bytes.find_first_not_of(" \t\r\n");
    if (ending == "gltf" || (first != bytes.npos && bytes[first] == '{')) {
        return {ErrorCode::bad_file, "",
                "this looks like the text form of glTF, whose meshes lie in other files; save the "
                "scan as GLB (binary glTF)"};
    }
    return {ErrorCode::bad_file, "",
            "this is not a mesh that can be read; save the scan as PLY, STL, OBJ or GLB"};
}

Result<ScanMesh> mesh_from(std::string_view bytes,
                           std::string_view name,
                           const ReadProgress& progress) {
    if (bytes.empty()) return Error{ErrorCode::bad_file, "", "the file is empty"};
    if (bytes.size() > most_scan_bytes)
        return Error{ErrorCode::bad_file, "", "the file is larger than 1 GiB; thin out the scan"};
    const auto ending = ending_of(name);
    auto reader = reader_by_content(bytes);
    if (reader == nullptr) reader = reader_by_ending(ending);
    if (reader == nullptr) return no_mesh(bytes, ending);
    ScanReading reading{bytes, progress};
    if (!reader(reading)) return reading.error();
    return std::move(reading).result();
}

Error without_memory() {
    return {ErrorCode::bad_file, "", "there is not enough memory for it; thin out the scan"};
}

// The file's bytes come first, at the speed of a disk, and are that part of the whole.
constexpr double reading_bytes = 0.3;

}  // namespace

Result<ScanMesh> read_scan_mesh_bytes(std::string_view bytes,
                                      std::string_view name_or_kind,
                                      const ReadProgress& progress) {
    try {
        return mesh_from(bytes, name_or_kind, progress);
    } catch (const std::bad_alloc&) {
        return without_memory();
    }
}

Result<ScanMesh> read_scan_mesh(const fs::path& path, const ReadProgress& progress) {
    const auto& go_on = progress.go_on;
    GoOnReading first;
    ReadProgress second;
    if (go_on) {
        first = [&](std::uintmax_t done, std::uintmax_t all) {
            const auto whole = static_cast<double>(std::max<std::uintmax_t>({done, all, 1}));
            return go_on(reading_bytes * static_cast<double>(done) / whole);
        };
        second.go_on = [&](double done) {
            return go_on(reading_bytes + (1.0 - reading_bytes) * done);
        };
    }
    try {
        const auto bytes = read_whole_file(path, most_scan_bytes, first);
        if (!bytes) return bytes.error();
        auto mesh = mesh_from(*bytes, path.filename().string(), second);
        if (mesh) return mesh;
        auto error = mesh.error();
        error.where = path.string() + (error.where.empty() ? "" : ", " + error.where);
        return error;
    } catch (const std::bad_alloc&) {
        auto error = without_memory();
        error.where = path.string();
        return error;
    }
}

}  // namespace engine
