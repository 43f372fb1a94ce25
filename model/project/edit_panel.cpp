// Edits of panels and loads.
#include "model/project/change.h"
#include "model/project/in_frame.h"

namespace model {

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

}  // namespace model
