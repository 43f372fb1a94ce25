#include "model/schedule/stop_work.h"

#include "model/schedule/stops.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace model {
namespace {

StopWork work_of(const Project& project,
                 const Catalogue& catalogue,
                 const Resolved& resolved,
                 const SawBar& bar,
                 std::size_t index) {
    const auto& cut = bar.cuts[index];
    StopWork work{.stock = bar.stock,
                  .section = bar.section,
                  .length = engine::Length::from_nm(resolved.pieces[cut.piece].length),
                  .ends = ends_at_saw(project, catalogue, resolved, cut.piece),
                  .bar = bar.number,
                  .mark = cut.mark,
                  .opposite = cut.hand == Hand::opposite ? 1 : 0,
                  .is_made = cut.state == CutState::cut,
                  .cuts = {{bar.number, index}}};
    if (work.ends != "square") work.hand = cut.hand;
    return work;
}

auto place_of(const StopWork& work, const Resolved& resolved, Index piece) {
    return std::tuple{work.stock, -work.length.nm(), resolved.pieces[piece].mark,
                      work.bar,   work.hand,         !work.is_made};
}

bool is_same_work(const StopWork& a, const StopWork& b) {
    return a.stock == b.stock && a.length == b.length && a.mark == b.mark && a.bar == b.bar &&
           a.hand == b.hand && a.is_made == b.is_made;
}

}  // namespace

std::vector<StopWork> stop_work(const Project& project,
                                const Catalogue& catalogue,
                                const Resolved& resolved,
                                const std::vector<SawBar>& bars) {
    using Place = decltype(place_of({}, resolved, 0));
    std::vector<std::pair<Place, StopWork>> all;
    for (const auto& bar : bars) {
        if (bar.is_used_up) continue;
        for (std::size_t i = 0; i < bar.cuts.size(); ++i) {
            const auto& cut = bar.cuts[i];
            if (cut.piece == no_index || cut.state == CutState::spoiled) continue;
            auto work = work_of(project, catalogue, resolved, bar, i);
            const auto place = place_of(work, resolved, cut.piece);
            all.emplace_back(place, std::move(work));
        }
    }
    std::ranges::stable_sort(all, {}, &std::pair<Place, StopWork>::first);
    std::vector<StopWork> rows;
    int setting = 0;
    for (auto& [place, work] : all) {
        if (!rows.empty() && is_same_work(rows.back(), work)) {
            rows.back().cuts.push_back(work.cuts.front());
            rows.back().opposite += work.opposite;
            continue;
        }
        const bool goes_on = !rows.empty() && rows.back().section == work.section &&
                             rows.back().length == work.length;
        if (!goes_on) ++setting;
        work.setting = setting;
        rows.push_back(std::move(work));
    }
    return rows;
}

}  // namespace model
