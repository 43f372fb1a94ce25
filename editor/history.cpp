#include "editor/history.h"

#include <utility>

namespace editor {

History::History(model::Project first, Revision last) : last_revision_{last} {
    push({}, std::move(first));
    saved_ = now();
}

void History::record(std::string label, model::Project next, const std::string& merge_key) {
    if (next == *now()) return;
    const bool merges = !merge_key.empty() && merge_key == merge_key_ && at_ > 0;
    steps_.resize(at_ + 1);
    if (merges) {
        steps_.pop_back();
        --at_;
    }
    merge_key_ = merge_key;
    if (merges && next == *now()) {
        merge_key_.clear();
        return;
    }
    push(std::move(label), std::move(next));
}

void History::undo() {
    if (can_undo()) --at_;
    merge_key_.clear();
}

void History::redo() {
    if (can_redo()) ++at_;
    merge_key_.clear();
}

void History::mark_saved() {
    saved_ = now();
    merge_key_.clear();  // a merge must never swallow the saved step
}

void History::push(std::string label, model::Project project) {
    steps_.push_back({std::move(label), std::make_shared<const model::Project>(std::move(project)),
                      ++last_revision_});
    if (steps_.size() > most_steps) steps_.erase(steps_.begin());
    at_ = steps_.size() - 1;
}

}  // namespace editor
