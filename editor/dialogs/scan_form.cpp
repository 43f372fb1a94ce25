#include "editor/dialogs/scan_form.h"

#include "editor/dialogs/checked_field.h"
#include "editor/dialogs/form_line.h"
#include "editor/dialogs/obstacle_fields.h"
#include "editor/dimension_values.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/scan_loader.h"
#include "engine/files/scan_unit.h"

#include <cmath>

namespace editor {
namespace {

model::ScannedObstacle& scan_in(ScanForm& form) {
    return std::get<model::ScannedObstacle>(form.obstacle.shape);
}

// The file's own words come first, then what its size says.
void guess(ScanForm& form, const engine::ScanMesh& mesh) {
    if (form.has_asked) return;
    form.has_asked = true;
    auto& scan = scan_in(form);
    const auto guesses = engine::guessed_unit(mesh.lo, mesh.hi);
    if (!guesses.empty()) scan.unit = guesses.front().unit;
    if (mesh.unit) scan.unit = *mesh.unit;
    if (mesh.is_y_up) scan.turn[0] = "90";
}

std::string reason_of(const engine::ScanMesh& mesh, engine::LengthUnit unit) {
    if (mesh.unit == unit) return "the file says so";
    for (const auto& guessed : engine::guessed_unit(mesh.lo, mesh.hi)) {
        if (guessed.unit == unit) return guessed.reason;
    }
    return {};
}

void draw_unit_words(ScanForm& form, const engine::ScanMesh& mesh, const Derived& derived) {
    const auto unit = scan_in(form).unit;
    std::string size;
    for (std::size_t k = 0; k < 3; ++k) {
        const double mm =
            (static_cast<double>(mesh.hi[k]) - static_cast<double>(mesh.lo[k])) * mm_in(unit);
        const engine::Quantity side{
            .kind = engine::QuantityKind::length,
            .length = engine::Length::from_nm(std::llround(std::min(mm, 9e9) * 1e6))};
        size += (k > 0 ? " x " : "") + quantity_text(side, derived.project->shown);
    }
    const std::string words = std::to_string(mesh.triangles.size()) + " triangles, then " + size;
    draw_wrapped(words, Type::strong);
    log_item("comes to", words);
    draw_wrapped(reason_of(mesh, unit), Type::small, colour::quiet);
    if (mesh.dropped > 0) {
        draw_wrapped(std::to_string(mesh.dropped) + " triangles without area are left out",
                     Type::small, colour::quiet);
    }
}

void draw_reading(const ScanForm& form) {
    const auto done = static_cast<float>(form.reading->work.done());
    ImGui::ProgressBar(done, {-1.0F, 0.0F});
    log_item("progress", std::to_string(static_cast<int>(done * 100.0F)));
}

// Gives whether it can be put.
bool draw_read(ScanForm& form, const engine::ScanMesh& mesh, const Derived& derived) {
    guess(form, mesh);
    CheckedFields fields(derived);
    draw_form_line("name", form.obstacle.name, "van inside", form.is_fresh);
    draw_scan_fields(fields, scan_in(form));
    draw_unit_words(form, mesh, derived);
    draw_wrapped(
        "Once it is in the room it can also be placed by three points: change it in the list.",
        Type::small, colour::quiet);
    return fields.are_all_known() && !form.obstacle.name.empty();
}

// Files that come next, by this form once more.
void draw_waiting(const ScanForm& form) {
    if (form.waiting.empty()) return;
    std::string words = "then";
    for (const auto& file : form.waiting) {
        words += (words == "then" ? " " : ", ") + file.filename().string();
    }
    draw_wrapped(words, Type::small, colour::quiet);
    log_item("waiting", words);
}

std::optional<Change> tried_change(ScanForm& form, const Derived& derived) {
    const model::Edit edit = model::PutObstacle{form.obstacle, {}};
    form.trouble =
        reason_against_name(derived.project->room, form.obstacle.name, {}, "an obstacle");
    if (form.trouble.empty()) form.trouble = reason_against_edit(derived, edit);
    if (!form.trouble.empty()) return std::nullopt;
    auto change = change_of(edit);
    change.label = "Import scan " + form.obstacle.name;
    return change;
}

}  // namespace

ScanOutcome draw_scan_form(ScanForm& form, const Derived& derived) {
    ScanOutcome outcome;
    const std::string title = "A scan of the room: " + form.file.filename().string();
    const DialogScope dialog("Scan", title.c_str(), scaled(620), DialogScope::Fields::scroll);
    if (!dialog) return outcome;
    outcome.is_busy = !form.reading->work.is_finished();
    bool can_put = false;
    if (outcome.is_busy) {
        draw_reading(form);
    } else if (const auto& result = form.reading->work.result(); result) {
        can_put = draw_read(form, **result, derived);
        form.is_fresh = false;
    } else {
        form.trouble = engine::to_text(result.error());
    }
    draw_waiting(form);
    if (is_being_changed()) form.trouble.clear();  // it was said of another one
    const auto answer = draw_form_answers(form.trouble, {.can_put = can_put});
    if (answer.puts) outcome.change = tried_change(form, derived);
    outcome.is_cancelled = answer.is_cancelled;
    if (outcome.is_cancelled) form.reading->work.cancel();
    if (outcome.change || outcome.is_cancelled) ImGui::CloseCurrentPopup();
    return outcome;
}

}  // namespace editor
