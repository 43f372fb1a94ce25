#include "model/schedule/rack.h"

#include "model/resolve/bar_supply.h"
#include "model/resolve/finding.h"

#include <algorithm>
#include <string>
#include <utility>

namespace model {
namespace {

bool is_as_long(const Project& project, const Resolved& resolved, const Formula& text, Nm length) {
    const auto own = stated_length(project, resolved, text);
    return own && *own == length;
}

std::string shown(const Project& project, Nm length) {
    return length_in_words(engine::Length::from_nm(length), project.shown);
}

// "A3, A4".
std::string marks_in(const BarAtSaw& bar, CutState state) {
    std::string marks;
    for (const auto& cut : bar.cuts) {
        if (cut.state != state || cut.mark.empty()) continue;
        marks += (marks.empty() ? "" : ", ") + cut.mark;
    }
    return marks;
}

// Where an offcut is that lies on the rack no more.
std::string where_it_went(const Project& project,
                          const Resolved& resolved,
                          const KeepBars& bars,
                          Nm length) {
    const auto bar = std::ranges::find_if(bars.at_saw, [&](const BarAtSaw& it) {
        return it.was_offcut && is_as_long(project, resolved, it.length, length);
    });
    if (bar == bars.at_saw.end())
        return "which is not there any more; put it back there, under Buy, if you have it";
    const auto made = marks_in(*bar, CutState::cut);
    if (!made.empty()) return "and " + made + " has been cut from that since";
    return "which is at the saw now; plan the cuts anew first, so that it lies there again";
}

}  // namespace

KeepBars bars_kept(const Stock& stock, std::string what_was_done) {
    return {.stock = stock.name,
            .offcuts = stock.offcuts,
            .at_home = stock.at_home,
            .at_saw = stock.at_saw,
            .what_was_done = std::move(what_was_done)};
}

void lay_one(std::vector<Offcut>& lying, const Formula& length) {
    const auto found = std::ranges::find(lying, length, &Offcut::length);
    if (found == lying.end()) {
        lying.push_back({.length = length});
    } else {
        ++found->count;
    }
}

bool take_one(const Project& project,
              const Resolved& resolved,
              std::vector<Offcut>& lying,
              Nm length) {
    const auto found = std::ranges::find_if(lying, [&](const Offcut& it) {
        return it.count > 0 && is_as_long(project, resolved, it.length, length);
    });
    if (found == lying.end()) return false;
    if (--found->count == 0) lying.erase(found);
    return true;
}

engine::Result<engine::Done> take_from_rack(const Project& project,
                                            const Resolved& resolved,
                                            KeepBars& bars,
                                            BarCut& cut) {
    if (cut.is_on_rack) {
        const auto length = stated_length(project, resolved, cut.measured);
        if (!length) return length.error();
        if (!take_one(project, resolved, bars.offcuts, *length)) {
            return engine::Error{engine::ErrorCode::out_of_range, cut.mark,
                                 "it was laid on the rack as an offcut of " +
                                     shown(project, *length) + ", " +
                                     where_it_went(project, resolved, bars, *length)};
        }
    }
    cut.is_on_rack = false;
    cut.measured.clear();
    return engine::Done{};
}

}  // namespace model
