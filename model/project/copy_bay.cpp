#include "model/project/copy_bay.h"

#include "model/project/free_name.h"

#include <algorithm>
#include <utility>

namespace model {

namespace {

// Starters call bays "column 2 level 1": along x the column counts, along z the level.
std::string name_of_copy(const std::vector<Bay>& bays, const std::string& name, Axis axis) {
    const std::string word = axis == Axis::x ? "column " : axis == Axis::z ? "level " : "";
    const std::size_t at = word.empty() ? name.npos : name.find(word);
    if (at == name.npos || (at > 0 && name[at - 1] != ' ')) return free_name_in(bays, name);
    const std::size_t begin = at + word.size();
    const std::size_t end = std::min(name.find(' ', begin), name.size());
    const auto counted = numbered(name.substr(0, end));
    if (!counted) return free_name_in(bays, name);
    for (int n = counted->number + 1;; ++n) {
        const std::string next = with_number(counted->stem, n) + name.substr(end);
        if (std::ranges::count(bays, next, &Bay::name) == 0) return next;
    }
}

class Copying {
public:
    Copying(Frame& frame, const Repeated& repeated, const RepeatBay& edit)
        : frame_{frame}, it_{repeated}, edit_{edit} {}

    void add_bay(int copy) {
        Bay bay = it_.bay;
        const auto end = static_cast<std::size_t>(copy);
        bay.name = name_of_copy(frame_.bays, bay.name, it_.axis);
        planes_of(bay, it_.axis) = {it_.ends[end - 1], it_.ends[end]};
        if (edit_.with_panels) add_panels(bay.name);
        if (edit_.with_loads) add_loads(bay.name);
        frame_.bays.push_back(std::move(bay));
    }

private:
    void add_panels(const std::string& bay) {
        std::vector<Panel> added;
        for (const Panel& panel : frame_.panels) {
            const bool is_where_it_begins =
                panel.face_axis == it_.axis && panel.face_side == Sense::minus;
            if (panel.bay == it_.bay.name && !is_where_it_begins) added.push_back(panel);
        }
        for (Panel& panel : added) {
            panel.bay = bay;
            panel.name = free_name_in(frame_.panels, panel.name);
            frame_.panels.push_back(std::move(panel));
        }
    }

    void add_loads(const std::string& bay) {
        std::vector<Load> added;
        for (const Load& load : frame_.loads) {
            const auto* in = std::get_if<std::string>(&load.where);
            if (in != nullptr && *in == it_.bay.name) added.push_back(load);
        }
        for (Load& load : added) {
            load.where = bay;
            load.name = free_name_in(frame_.loads, load.name);
            frame_.loads.push_back(std::move(load));
        }
    }

    Frame& frame_;
    const Repeated& it_;
    const RepeatBay& edit_;
};

}  // namespace

void copy_bay(Frame& frame, const Repeated& repeated, const RepeatBay& edit) {
    Copying copying(frame, repeated, edit);
    for (int copy = 1; copy <= repeated.times(); ++copy) copying.add_bay(copy);
}

}  // namespace model
