#include "editor/dialogs/writing.h"

#include "editor/keys.h"
#include "editor/kit/item_log.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <cmath>
#include <string>

namespace editor {

void draw_writing(WriteRun& run) {
    const DialogScope dialog("Writing", run.title.c_str(), scaled(420));
    if (!dialog) return;
    const double done = run.work.done();
    ImGui::ProgressBar(static_cast<float>(done), {-1.0F, 0.0F});
    log_item("progress", std::to_string(std::lround(done * 100.0)));
    draw_wrapped("Nothing is written before all of it is worked out.", Type::small, colour::quiet);
    ImGui::Dummy(scaled(1, 10));
    if (draw_button("Cancel") || is_pressed(key::escape)) {
        run.is_cancelled = true;
        run.work.cancel();
    }
    if (run.work.is_finished()) ImGui::CloseCurrentPopup();
}

}  // namespace editor
