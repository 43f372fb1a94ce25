// A scanned mesh that is brought into the room: read in the background, its unit asked, and placed.
#pragma once

#include "editor/derived.h"
#include "editor/dialogs/form_answers.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace editor {

struct ScanReading;  // editor/scan_loader.h

struct ScanForm {
    std::filesystem::path file;
    model::Obstacle obstacle;                    // a ScannedObstacle
    std::shared_ptr<ScanReading> reading;        // of the file
    std::vector<std::filesystem::path> waiting;  // to be brought in after this one
    bool has_asked = false;                      // the guesses of unit and turn are made
    std::string trouble;
    bool is_fresh = true;
};

struct ScanOutcome : FormOutcome {
    bool is_busy = false;  // still reading: draw another frame

    bool is_settled() const { return change.has_value() || is_cancelled; }
};

ScanOutcome draw_scan_form(ScanForm& form, const Derived& derived);

}  // namespace editor
