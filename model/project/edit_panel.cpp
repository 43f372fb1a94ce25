// Edits of panels, their vents, loads, and measured openings.
#include "model/project/change.h"
#include "model/project/in_frame.h"

namespace model {
namespace {

CutOut vent_cut_out(const VentOpening& opening, std::string name, const engine::TapeStyle& shown) {
    CutOut cut_out{.name = std::move(name), .is_vent = true};
    for (std::size_t k = 0; k < 2; ++k) {
        cut_out.least[k] = engine::exact_text(opening.least[k], shown);
        cut_out.most[k] = engine::exact_text(opening.most[k], shown);
    }
    return cut_out;
}

}  // namespace

Changed change(Project& project, const PutPanel& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) {
        return put_in_frame(project, frame, frame.panels, edit.panel, edit.instead_of);
    });
}

Changed change(Project& project, const RemovePanel& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) {
        return remove_named(frame.panels, edit.panel, described(frame));
    });
}

Changed change(Project& project, const PutVents& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) -> Changed {
        const auto found = find_named(frame.panels, edit.panel);
        if (found == frame.panels.end()) return no_such<Panel>(described(frame), edit.panel);
        const auto openings = vent_openings(edit.row);
        if (!openings) {
            auto error = openings.error();
            error.where = inside(inside(described(frame), described(*found)), error.where);
            return error;
        }
        Panel panel = *found;
        std::erase_if(panel.cut_outs,
                      [&](const CutOut& one) { return is_opening_of(one.name, edit.name); });
        int number = 0;
        for (const auto& opening : *openings) {
            panel.cut_outs.push_back(
                vent_cut_out(opening, edit.name + " " + std::to_string(++number), project.shown));
        }
        return put_in_frame(project, frame, frame.panels, panel, {});
    });
}

Changed change(Project& project, const PutLoad& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) {
        return put_in_frame(project, frame, frame.loads, edit.load, edit.instead_of);
    });
}

Changed change(Project& project, const RemoveLoad& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) {
        return remove_named(frame.loads, edit.load, described(frame));
    });
}

Changed change(Project& project, const PutOpening& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) {
        return put_in_frame(project, frame, frame.openings, edit.opening, edit.instead_of);
    });
}

Changed change(Project& project, const RemoveOpening& edit) {
    return in_frame(project, edit.frame, [&](Frame& frame) {
        return remove_named(frame.openings, edit.opening, described(frame));
    });
}

}  // namespace model
