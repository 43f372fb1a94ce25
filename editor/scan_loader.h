// Scanned meshes of the room are read in the background: for an import, and for a project that
// refers to them.
#pragma once

#include "editor/background_work.h"
#include "editor/desk.h"
#include "engine/files/scan_mesh.h"
#include "engine/geometry/mesh.h"

#include <filesystem>
#include <map>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace editor {

using ReadMesh = std::shared_ptr<const engine::ScanMesh>;

// One file that an import reads.
struct ScanReading {
    explicit ScanReading(const std::filesystem::path& file);
    explicit ScanReading(BackgroundWork<ReadMesh>::Work read) : work{std::move(read)} {}

    BackgroundWork<ReadMesh> work;
};

// A scan as clearances are measured from it, and as it is drawn: in the file's own axes, mm.
struct LoadedScan {
    std::shared_ptr<const model::Scan> scan;
    std::shared_ptr<const engine::Mesh> drawn;
};

// Reads the file unless it is given, and builds what is needed of it.
engine::Result<LoadedScan> loaded_scan(const std::filesystem::path& file,
                                       engine::LengthUnit unit,
                                       const ReadMesh& read,
                                       const BackgroundWork<LoadedScan>::GoOn& go_on);

// Which scan is drawn where, and as which obstacle it is picked.
struct DrawnScan {
    std::string key;
    engine::Placement place;
    model::Index obstacle = 0;  // in Project::room
};

struct ScanLoader {
    std::string key;  // of the scan that is being loaded
    std::unique_ptr<BackgroundWork<LoadedScan>> work;
    std::filesystem::path read_file;  // the last one that an import read, so that it is read once
    ReadMesh read;
    std::map<std::string, std::shared_ptr<const engine::Mesh>, std::less<>> drawn;  // by key

    // What was made of them last, and of which state.
    std::shared_ptr<const engine::SceneBatch> batch;
    std::vector<DrawnScan> batch_of;
};

// Once a frame: takes what is ready and begins with what is wanted next. Sets UiState::goes_on
// while it reads.
void tend_scans(Desk& desk);

// "reading van.ply: 40 %"; empty while nothing is read.
std::string scan_words(const Desk& desk);

// How it stands with one scan: that it is being read, or why it is not; empty: neither.
std::string scan_words(const Desk& desk, const model::ScannedObstacle& scan);

// Reads no further; the scan is told as not read.
void stop_scan(Desk& desk);

// Whether some could not be read, or were stopped.
bool has_unread_scans(const Desk& desk);

// Tries those once more; or, of one scan, the next time that it is wanted.
void read_scans_again(Desk& desk);
void forget_fault(Desk& desk, const model::ScannedObstacle& scan);

// All scans where they stand; null when there is none. The same one until it changes.
std::shared_ptr<const engine::SceneBatch> scan_batch(Desk& desk);

// Asks for a file, and begins to read one.
void browse_for_scan(Desk& desk);
void import_scan(Desk& desk, const std::filesystem::path& file);
// One after another.
void import_scans(Desk& desk, std::vector<std::filesystem::path> files);

}  // namespace editor
