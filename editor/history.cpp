#include "editor/history.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace editor {

History::History(model::Project first, Revision last) : last_revision_{last} {
    push({}, std::move(first));
    saved_ = now();
}

void History::record(std::string label, model::Project next, const std::string& merge_key) {
    if (next == *now()) return;
    const bool merges = !merge_key.empty() && merge_key == merge_key_ && at_ > 0;
    const auto redone = steps_.begin() + static_cast<std::ptrdiff_t>(at_) + 1;
    if (!merges) end_merge();
    if (!merges && !merge_key.empty()) cut_off_.assign(redone, steps_.end());
    steps_.erase(redone, steps_.end());
    if (merges) {
        steps_.pop_back();
        --at_;
    }
    if (merges && next == *now()) {
        steps_.insert(steps_.end(), cut_off_.begin(), cut_off_.end());
        end_merge();
        return;
    }
    merge_key_ = merge_key;
    push(std::move(label), std::move(next));
}

void History::end_merge() {
    merge_key_.clear();
    cut_off_.clear();
}

bool History::holds(Revision revision) const {
    return std::any_of(steps_.begin(), steps_.end(),
                       [&](const Step& step) { return step.revision == revision; });
}

void History::undo() {
    if (can_undo()) --at_;
    end_merge();
}

void History::redo() {
    if (can_redo()) ++at_;
    end_merge();
}

void History::mark_saved() {
    saved_ = now();
    end_merge();  // a merge must never swallow the saved step
}

void History::mark_saved_as(model::Project saved) {
    saved_ = std::make_shared<const model::Project>(std::move(saved));
    end_merge();
}

void History::restate(
    const std::function<std::optional<model::Project>(const model::Project&)>& other) {
    end_merge();
    for (auto& step : steps_) {
        if (auto project = other(*step.project)) {
            step.project = std::make_shared<const model::Project>(*std::move(project));
        }
    }
}

void History::push(std::string label, model::Project project) {
    steps_.push_back({std::move(label), std::make_shared<const model::Project>(std::move(project)),
                      ++last_revision_});
    if (steps_.size() > most_steps) steps_.erase(steps_.begin());
    at_ = steps_.size() - 1;
}

}  // namespace editor
