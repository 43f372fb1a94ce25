#include "editor/mend_board.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

constexpr std::size_t most_offered = 4;

// Findings that say that something does not fit where it stands.
bool is_of_fit(const std::string& code) {
    constexpr std::array<std::string_view, 4> codes{"clearance", "frame_gap", "inside_obstacle",
                                                    "in_the_way"};
    return std::find(codes.begin(), codes.end(), code) != codes.end();
}

// "Set depth to 17 7/8 in, the most that fits".
void add_end_of_band(const Derived& now, const model::Band& band, std::vector<model::Mend>& ways) {
    const auto& shown = now.project->shown;
    for (const bool is_most : {true, false}) {
        const auto end = is_most ? largest_that_fits(band, shown) : least_that_fits(band, shown);
        if (!end || *end == band.value) continue;
        const auto words = model::length_in_words(engine::Length::from_nm(*end), shown);
        ways.push_back({"band " + band.dimension,
                        "Set " + band.dimension + " to " + words + ", the " +
                            (is_most ? "most" : "least") + " that fits",
                        {model::SetFormula{band.dimension, words}}});
    }
}

std::vector<model::Mend> ends_of_bands(const Derived& now, const BandWorker* bands) {
    std::vector<model::Mend> ways;
    if (bands == nullptr) return ways;
    for (const auto& dimension : now.project->dimensions) {
        const auto band = bands->band(dimension.name);
        if (band && !band->fits_now && engine::names_in(dimension.formula).empty())
            add_end_of_band(now, *band, ways);
    }
    return ways;
}

void begin(CardMends& card,
           const Derived& now,
           const model::Catalogue& catalogue,
           const BandWorker* bands,
           const std::vector<model::Finding>& alike) {
    const auto add = [&](std::vector<model::Mend> ways, bool is_for_all) {
        for (auto& way : ways) card.untried.push_back({std::move(way), is_for_all});
    };
    add(model::ways_to_mend({*now.project, catalogue, now.resolved}, alike), alike.size() == 1);
    if (is_of_fit(alike.front().code)) add(ends_of_bands(now, bands), true);
    std::reverse(card.untried.begin(), card.untried.end());
    card.has_begun = true;
}

// Only the way that is tried next is extended to all of them: with many that takes its time.
void try_one(CardMends& card,
             const Derived& now,
             const model::Catalogue& catalogue,
             const std::vector<model::Finding>& alike) {
    auto next = std::move(card.untried.back());
    card.untried.pop_back();
    const model::Ailing ailing{*now.project, catalogue, now.resolved};
    std::optional<model::Mend> mend = std::move(next.way);
    if (!next.is_for_all) mend = model::way_for_all(ailing, alike, std::move(*mend));
    if (!mend) return;
    ++card.tried;
    if (model::is_mended_by(ailing, *now.scans, now.findings, alike, *mend))
        card.kept.push_back(std::move(*mend));
    if (card.kept.size() == most_offered) card.untried.clear();
}

}  // namespace

std::vector<model::Finding> findings_in(const Derived& now, std::size_t group) {
    std::vector<model::Finding> findings;
    for (const auto index : now.finding_groups[group].findings)
        findings.push_back(now.findings[index]);
    return findings;
}

void begin_mends(MendBoard& board, const Derived& now, bool may_work) {
    if (board.of != worked_out_of(now)) board.cards.clear();
    board.of = worked_out_of(now);
    board.may_work = may_work;
    board.has_more = false;
    begin_prices(board.prices, now, may_work);
}

const CardMends& mends_on(MendBoard& board,
                          std::size_t group,
                          const Derived& now,
                          const model::Catalogue& catalogue,
                          const BandWorker* bands) {
    auto& card = board.cards[group];
    if (card.is_done()) return card;
    if (is_of_fit(now.findings[now.finding_groups[group].findings[0]].code) && bands != nullptr &&
        bands->is_busy()) {
        return card;  // wakes the window when it is done
    }
    if (!board.may_work) {
        board.has_more = true;
        return card;
    }
    board.may_work = false;
    const auto alike = findings_in(now, group);
    if (!card.has_begun) begin(card, now, catalogue, bands, alike);
    if (!card.untried.empty()) try_one(card, now, catalogue, alike);
    board.has_more = board.has_more || !card.is_done();
    return card;
}

}  // namespace editor
