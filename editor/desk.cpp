#include "editor/desk.h"

#include "editor/scan_loader.h"
#include "editor/skeleton_scene.h"

#include <algorithm>
#include <utility>
#include <variant>

namespace editor {
namespace {

// Each frame of a drag has had one of its own.
void forget_figures(Desk& desk) {
    if (desk.figures.size() <= 2 * History::most_steps) return;
    std::erase_if(desk.figures,
                  [&](const auto& entry) { return !desk.history.holds(entry.first); });
}

// A scan that is being read is not told as one that is not.
void pass_over_reading(const Desk& desk, RoomFacts& facts) {
    const auto& room = project_of(desk).room;
    const auto& loader = desk.scan_loader;
    if (!loader || !loader->work) return;
    for (std::size_t i = 0; i < room.size(); ++i) {
        const auto* scan = std::get_if<model::ScannedObstacle>(&room[i].shape);
        if (scan == nullptr || loader->key != model::scan_key(*scan)) continue;
        std::erase_if(facts.obstacles[i].findings,
                      [](const auto& finding) { return finding.code == "scan_not_read"; });
    }
}

// The one that is dragged or typed; while there is none, those that are chosen.
std::vector<std::string> dimensions_in_hand(const UiState& ui) {
    if (ui.hand.dragged) return {ui.hand.dragged->dimension};
    if (ui.hand.typed) return {ui.hand.typed->dimension};
    std::vector<std::string> chosen;
    for (const auto& subject : ui.selection.subjects) {
        if (subject.kind == model::SubjectKind::dimension) chosen.push_back(subject.name);
    }
    return chosen;
}

// While something is dragged nothing is looked for beyond the clearance that is wanted: that
// would cost more than all the rest of the frame.
double near_reach(const UiState& ui) {
    return ui.hand.dragged || ui.sketch.planes.dragged ? 0.0 : near_reach_mm;
}

}  // namespace

Desk::Desk(std::shared_ptr<const model::Catalogue> tables)
    : catalogue{std::move(tables)},
      history{model::Project{}},
      scans{std::make_shared<const model::ScanLibrary>()} {}

const model::Project& project_of(const Desk& desk) { return *desk.history.now(); }

const Derived& derived(Desk& desk) {
    const Revision revision = desk.history.revision();
    if (!desk.derived_memo || desk.derived_memo->revision != revision) {
        desk.derived_memo =
            derive(desk.history.now(), revision, *desk.catalogue, desk.scans, desk.prices.library);
        desk.figures[revision] = {nullptr, desk.derived_memo->summary, desk.derived_memo->tally};
        forget_figures(desk);
    }
    return *desk.derived_memo;
}

const engine::SceneData& scene(Desk& desk) {
    const Derived& now = derived(desk);
    if (!desk.scene_memo || desk.scene_memo->revision != now.revision) {
        auto memory = desk.scene_memo ? std::move(*desk.scene_memo) : engine::SceneData{};
        desk.scene_memo =
            skeleton_scene(*now.project, *desk.catalogue, now.resolved, std::move(memory));
        desk.scene_memo->revision = now.revision;
        desk.scene_memo->fixed = scan_batch(desk);
    }
    const auto& trial = desk.ui.sketch.trial;
    desk.scene_memo->ghost = trial ? trial->ghost : nullptr;
    return *desk.scene_memo;
}

void want_bands(Desk& desk) {
    if (!desk.bands) return;
    auto first = dimensions_in_hand(desk.ui);
    const Revision revision = desk.history.revision();
    if (desk.bands_wanted_of == revision && desk.bands_wanted_first == first &&
        desk.bands_wanted_in == desk.scans) {
        return;
    }
    desk.bands_wanted_of = revision;
    desk.bands_wanted_in = desk.scans;
    desk.bands_wanted_first = first;
    BandsWanted wanted{desk.history.now(), desk.catalogue, desk.scans, {}};
    const auto is_in_hand = [&](const model::Dimension& dimension) {
        return std::ranges::find(first, dimension.name) != first.end();
    };
    // Measures of obstacles are looked at least: they come last.
    const auto& dimensions = desk.history.now()->dimensions;
    const auto measures_of = derived(desk).measures_of;
    const auto turn_of = [&](std::size_t i) {
        return is_in_hand(dimensions[i]) ? 0 : measures_of[i].empty() ? 1 : 2;
    };
    for (const int turn : {0, 1, 2}) {
        for (std::size_t i = 0; i < dimensions.size(); ++i) {
            if (dimensions[i].kind != engine::QuantityKind::length) continue;
            if (turn_of(i) == turn) wanted.dimensions.push_back(dimensions[i].name);
        }
    }
    desk.bands->want(std::move(wanted));
}

const RoomFacts& room_facts(Desk& desk) {
    const Derived& now = derived(desk);
    auto& memo = desk.room_memo;
    const double reach_mm = near_reach(desk.ui);
    if (!memo || memo->revision != now.revision || memo->scans != desk.scans ||
        memo->reach_mm < reach_mm) {
        memo = room_facts(now, *desk.catalogue, desk.scans, reach_mm);
        pass_over_reading(desk, *memo);
    }
    return *memo;
}

std::optional<Figures> figures_before(const Desk& desk) {
    const auto at = desk.figures.find(desk.history.revision_before());
    if (!desk.history.can_undo() || at == desk.figures.end()) return std::nullopt;
    auto figures = at->second;
    figures.project = desk.history.before();
    return figures;
}

const std::string& last_change_text(Desk& desk) {
    const Revision before = desk.history.revision_before();
    const Revision after = desk.history.revision();
    auto& memo = desk.change_memo;
    if (!memo || memo->before != before || memo->after != after) {
        const auto figures = figures_before(desk);
        memo = {before, after,
                figures ? change_text(*figures, figures_of(derived(desk))) : std::string()};
    }
    return memo->text;
}

namespace {

bool changes_size(const Change& change) {
    return std::ranges::any_of(change.edits, [](const model::Edit& edit) {
        return edit.get_if<model::SetFormula>() != nullptr;
    });
}

}  // namespace

engine::Result<engine::Done> submit(Desk& desk, const Change& change) {
    model::Project next = project_of(desk);
    std::string label = change.label;
    for (const auto& edit : change.edits) {
        auto applied = model::apply(std::move(next), edit);
        if (!applied) {
            desk.ui.notice = Notice{engine::to_text(applied.error()), true};
            return applied.error();
        }
        next = std::move(applied).value();
        if (change.label.empty()) label = model::label_of(edit);
    }
    desk.ui.notice.reset();
    if (!change.told.empty()) desk.ui.notice = Notice{change.told};
    if (changes_size(change)) desk.ui.help.has_adjusted = true;
    desk.history.record(std::move(label), std::move(next), change.merge_key);
    return engine::Done{};
}

void forget_derived(Desk& desk) {
    desk.derived_memo.reset();
    desk.scene_memo.reset();
    desk.room_memo.reset();
}

void replace_project(Desk& desk, model::Project project, std::filesystem::path file) {
    desk.history = History(std::move(project), desk.history.newest_revision());
    desk.file = std::move(file);
    desk.file_stamp = {};
    desk.figures.clear();
    desk.scan_loader.reset();
    desk.scans = std::make_shared<const model::ScanLibrary>();
    if (desk.bands) desk.bands->forget();
    desk.change_memo.reset();
    auto& ui = desk.ui;
    ui.selection = {};
    ui.notice.reset();  // of what lay here before
    ui.help.has_adjusted = false;
    ui.help.has_exported = false;
    ui.hand = {};
    ui.offers = {};
    ui.saw = {};
    ui.join = {.scope = ui.join.scope};
    ui.make = {.table = ui.make.table};
    ui.prove = {.sheet = ui.prove.sheet};
    ui.stock_filter.clear();
    ui.vent_source.reset();
    ui.placing.reset();
    ui.seeing = {};
    ui.sketch = {};
    ui.hovered_hole.reset();
    ui.dialog = std::monostate{};
    ui.interrupted.clear();
    ui.lets_go_of_fields = true;
    begin_prices(desk);
    see_from(desk, engine::ViewFrom::corner);
}

void interrupt_with(Desk& desk, Dialog dialog) {
    auto& ui = desk.ui;
    const bool has_had_its_say = std::holds_alternative<UnsavedQuestion>(ui.dialog) ||
                                 std::holds_alternative<Trouble>(ui.dialog);
    if (is_open(ui.dialog) && !has_had_its_say) ui.interrupted.push_back(std::move(ui.dialog));
    ui.dialog = std::move(dialog);
}

void close_dialog(Desk& desk) {
    auto& ui = desk.ui;
    ui.dialog = std::monostate{};
    if (ui.interrupted.empty()) return;
    ui.dialog = std::move(ui.interrupted.back());
    ui.interrupted.pop_back();
}

void see_from(Desk& desk, engine::ViewFrom from) {
    const double turn = front_turn(derived(desk).resolved);
    auto& view = desk.ui.view;
    view.camera = engine::orbited(engine::seen_from(from, view.camera), turn, 0.0);
    view.wants_fit = true;
}

std::string title_of(const Desk& desk) {
    const auto& name = project_of(desk).name;
    if (!name.empty()) return name;
    return desk.file.empty() ? "Untitled" : desk.file.stem().string();
}

}  // namespace editor
