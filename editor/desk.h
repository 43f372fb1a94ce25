// The desk: the project with its history, what follows from it, and what is on the screen but not
// in the file. All changes go through submit.
#pragma once

#include "editor/band_worker.h"
#include "editor/buy_run.h"
#include "editor/change.h"
#include "editor/derived.h"
#include "editor/file_stamp.h"
#include "editor/history.h"
#include "editor/nest_run.h"
#include "editor/prices.h"
#include "editor/room_facts.h"
#include "editor/ui_state.h"
#include "engine/render/scene.h"
#include "engine/result.h"

#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace editor {

// What the last step changed, in words.
struct ChangeText {
    Revision before = 0;
    Revision after = 0;
    std::string text;
};

struct ScanLoader;    // editor/scan_loader.h
class JournalKeeper;  // editor/journal_keeper.h
struct SeenMemo;      // editor/seen_scene.h

struct Desk {
    explicit Desk(std::shared_ptr<const model::Catalogue> tables);

    std::shared_ptr<const model::Catalogue> catalogue;
    History history;
    std::filesystem::path file;                 // empty: never saved
    FileStamp file_stamp;                       // as it was when it was last looked into
    std::filesystem::path state_folder;         // what the program keeps for itself; empty: nothing
    std::vector<std::filesystem::path> recent;  // files that were opened or saved, the last first
    std::shared_ptr<JournalKeeper> journal;     // none: nothing is kept against a crash
    std::vector<std::filesystem::path> samples;       // projects to look at first
    std::shared_ptr<const model::ScanLibrary> scans;  // those that reading is done with; never null
    std::shared_ptr<ScanLoader> scan_loader;          // reads them; none while there is none
    UiState ui;

    // Made when asked for, by revision; use derived(), scene() and last_change_text().
    std::optional<Derived> derived_memo;
    std::optional<engine::SceneData> scene_memo;
    std::shared_ptr<SeenMemo> seen_memo;  // the scene in the way it is seen
    std::map<Revision, Figures> figures;  // without their projects, which the history holds
    std::optional<ChangeText> change_memo;
    std::optional<RoomFacts> room_memo;  // also by scans

    // How far dimensions may go; null where nobody waits for it.
    std::unique_ptr<BandWorker> bands;
    std::unique_ptr<NestRun> nest_run;  // see editor/nest_run.h
    PricesRead prices{no_prices(), {}, {}, engine::LengthUnit::inch};
    std::unique_ptr<BuyRun> buy_run;  // see editor/buy_run.h
    std::optional<BuyFacts> buy_facts;
    mutable std::optional<GoodsMemo> goods_memo;  // see editor/purchase_desk.h
    std::function<void()> wake;                   // of the window, from any thread; may be empty
    Revision bands_wanted_of = 0;
    std::shared_ptr<const model::ScanLibrary> bands_wanted_in;  // with which scans
    std::vector<std::string> bands_wanted_first;
};

const model::Project& project_of(const Desk& desk);

// What follows from the project as it is now.
const Derived& derived(Desk& desk);

// The same as drawable values; its revision is the project's.
const engine::SceneData& scene(Desk& desk);

// How near everything comes to the room as it is now.
const RoomFacts& room_facts(Desk& desk);

// The figures before the last step; none when they were never needed.
std::optional<Figures> figures_before(const Desk& desk);

// What the last step changed; empty when nothing that is told, or when it is not known.
const std::string& last_change_text(Desk& desk);

// Asks for the bands of the project as it is now, that of the dimension under the hand first.
void want_bands(Desk& desk);

// Makes the edits, all or none. A refusal is also shown along the bottom of the window.
engine::Result<engine::Done> submit(Desk& desk, const Change& change);

// What follows from the project is worked out anew: its scans are others.
void forget_derived(Desk& desk);

// Takes another project, with a new history; the camera is to show it whole.
void replace_project(Desk& desk, model::Project project, std::filesystem::path file);

// Shows a dialog; one that is open already waits until this one is closed.
void interrupt_with(Desk& desk, Dialog dialog);

// Puts the dialog away, and brings back the one that it interrupted.
void close_dialog(Desk& desk);

// Turns the camera to that side of the cabinets and shows all of them.
void see_from(Desk& desk, engine::ViewFrom from);

// "Parts box" or "Untitled".
std::string title_of(const Desk& desk);

}  // namespace editor
