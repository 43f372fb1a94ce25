#include "editor/choice_price.h"

#include "editor/change.h"
#include "model/room/resolve_in_room.h"
#include "model/schedule/weight.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace editor {
namespace {

// What is said of what: sentences hold numbers that differ without being news.
using Complaint = std::tuple<std::string, model::SubjectKind, std::string, std::string>;

std::vector<Complaint> complaints_of(const model::Finding& finding) {
    if (finding.severity == model::Severity::note) return {};
    if (finding.concerns.empty()) return {{finding.code, model::SubjectKind::project, {}, {}}};
    std::vector<Complaint> all;
    for (const auto& subject : finding.concerns) {
        all.emplace_back(finding.code, subject.kind, subject.frame, subject.name);
    }
    return all;
}

// How severe the worst of each is.
using Complaints = std::map<Complaint, model::Severity>;

Complaints complaints_of(const std::vector<model::Finding>& findings) {
    Complaints all;
    for (const auto& finding : findings) {
        for (auto& complaint : complaints_of(finding)) {
            auto& worst = all.try_emplace(std::move(complaint), finding.severity).first->second;
            worst = std::max(worst, finding.severity);
        }
    }
    return all;
}

// A warning that becomes an error is news too.
bool is_news(const Complaint& complaint, model::Severity severity, const Complaints& known) {
    const auto at = known.find(complaint);
    return at == known.end() || at->second < severity;
}

bool has_news(const model::Finding& finding, const Complaints& known) {
    const auto complaints = complaints_of(finding);
    return std::any_of(complaints.begin(), complaints.end(), [&](const Complaint& complaint) {
        return is_news(complaint, finding.severity, known);
    });
}

// Of what is concerned, only that which was not before.
model::Finding news_of(model::Finding finding, const Complaints& known) {
    std::erase_if(finding.concerns, [&](const model::Subject& subject) {
        return !is_news({finding.code, subject.kind, subject.frame, subject.name}, finding.severity,
                        known);
    });
    return finding;
}

// One place by its name, several only by their number: the row has no room for a list.
std::string place_words(const FindingGroup& group, const std::vector<model::Finding>& findings) {
    const auto& concerns = group.concerns;
    if (concerns.size() < 2) return where_words(group, findings);
    const auto is_like_first = [&](const model::Subject& subject) {
        return subject.kind == concerns.front().kind;
    };
    const bool are_alike = std::all_of(concerns.begin(), concerns.end(), is_like_first);
    return std::to_string(concerns.size()) + " " +
           (are_alike ? std::string(model::name_of(concerns.front().kind)) + "s" : "places");
}

std::vector<PriceWarning> warnings_of(const std::vector<model::Finding>& findings) {
    std::vector<PriceWarning> warnings;
    for (const auto& group : finding_groups(findings)) {
        const auto& finding = findings[group.findings[0]];
        warnings.push_back({place_words(group, findings),
                            finding.what + (finding.mend.empty() ? "" : "; " + finding.mend),
                            finding.severity == model::Severity::error});
    }
    return warnings;
}

void compare_findings(Price& price,
                      const std::vector<model::Finding>& before,
                      const std::vector<model::Finding>& after) {
    const auto known = complaints_of(before);
    const auto there = complaints_of(after);
    for (const auto& finding : after) {
        if (has_news(finding, known)) price.brings.push_back(news_of(finding, known));
    }
    price.warnings = warnings_of(price.brings);
    for (const auto& finding : before) {
        const auto complaints = complaints_of(finding);
        if (complaints.empty()) continue;
        price.mends +=
            std::none_of(complaints.begin(), complaints.end(),
                         [&](const Complaint& complaint) { return there.count(complaint) > 0; })
                ? 1
                : 0;
    }
}

}  // namespace

Price price_of(const Derived& now, const model::Catalogue& catalogue, const Choice& choice) {
    Price price;
    const auto next = project_after(*now.project, {.edits = choice.edits});
    if (!next) {
        price.refused = engine::to_text(next.error());
        return price;
    }
    const auto& project = next.value();
    const auto resolved = model::resolve_in_room(project, catalogue, *now.scans);
    const auto weights = model::piece_weights_kg(project, catalogue, resolved);
    const auto tally = model::tally_of(project, catalogue, resolved, weights);
    price.pieces = model::piece_count(tally) - model::piece_count(now.tally);
    price.holes = tally.holes - now.tally.holes;
    price.fasteners = model::fastener_count(tally) - model::fastener_count(now.tally);
    price.weight_kg = tally.weight_kg - now.tally.weight_kg;
    price.parts = model::part_change_words(now.tally, tally);
    price.lengths = model::length_change_words(*now.project, now.tally, project, tally);
    compare_findings(price, now.resolved.findings, resolved.findings);
    return price;
}

void begin_prices(PriceBoard& board, const Derived& now, bool may_work) {
    constexpr std::size_t most_kept = 64;
    if (board.of != worked_out_of(now) || board.prices.size() > most_kept) {
        board.prices.clear();
        board.of = worked_out_of(now);
    }
    board.may_work = may_work;
    board.has_more = false;
}

const Price* price_on(PriceBoard& board,
                      const std::string& about,
                      const Derived& now,
                      const model::Catalogue& catalogue,
                      const Choice& choice) {
    auto& prices = board.prices[about];
    const auto at = prices.find(choice.name);
    if (at != prices.end()) return &at->second;
    if (!board.may_work) {
        board.has_more = true;
        return nullptr;
    }
    board.may_work = false;
    return &prices.emplace(choice.name, price_of(now, catalogue, choice)).first->second;
}

}  // namespace editor
