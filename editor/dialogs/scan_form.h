// A scanned mesh that is brought into the room: read in the background, its unit asked, and placed.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace editor {

struct ScanReading;  // editor/scan_loader.h

struct ScanForm {
    std::filesystem::path file;
    model::Obstacle obstacle;              // a ScannedObstacle
    std::shared_ptr<ScanReading> reading;  // of the file
    bool has_asked = false;                // the guesses of unit and turn are made
    std::string trouble;
    bool is_fresh = true;
};

struct ScanOutcome : FormOutcome {
    bool is_busy = false;  // still reading: draw another frame
};

ScanOutcome draw_scan_form(ScanForm& form, const Derived& derived);

}  // namespace editor
