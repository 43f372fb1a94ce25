#include "model/mend/mend.h"

#include "model/mend/mend_rows.h"
#include "model/room/resolve_in_room.h"
#include "model/schedule/findings.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <utility>

namespace model {
namespace {

std::vector<Mend> ways_against(const Ailing& ailing, const Finding& finding) {
    const auto* row = mend_row(finding.code);
    if (row == nullptr || row->ways == nullptr) return {};
    return row->ways({ailing, finding});
}

std::optional<Mend> way_against(const Ailing& ailing, const Finding& finding, const Mend& like) {
    auto ways = ways_against(ailing, finding);
    const auto same = std::ranges::find(ways, like.name, &Mend::name);
    if (same == ways.end()) return std::nullopt;
    return std::move(*same);
}

// Seen without a copy of the project, since joints by the hundred may lack one drill.
bool is_same_shop(const Mend& a, const Mend& b) {
    if (a.edits.size() != 1 || b.edits.size() != 1) return false;
    const auto* one = a.edits.front().get_if<SetShop>();
    const auto* other = b.edits.front().get_if<SetShop>();
    return one != nullptr && other != nullptr && one->shop == other->shop;
}

// A way that grows from finding to finding, with the project that it makes.
class GrowingMend {
public:
    GrowingMend(const Ailing& ailing, Mend way, Project first)
        : ailing_{ailing}, way_{std::move(way)}, first_{std::move(first)}, so_far_{first_} {}

    // Adds what mends the other finding by the same way; false where there is no such, or no more
    // is to be tried.
    bool extend(const Finding& other) {
        const auto alone = way_against(ailing_, other, way_);
        if (!alone) return false;
        if (is_same_shop(*alone, way_)) return true;
        if (++tried_ == most_mended_together) return false;
        if (!wants_its_own(other) && is_done_by(*alone)) return true;
        const auto more = way_against({so_far_, ailing_.catalogue, ailing_.resolved}, other, way_);
        return more && add(*more);
    }

    Mend whole() && {
        if (has_other_words_) way_.words += "; likewise at the others";
        return std::move(way_);
    }

private:
    // Of three things with one name two are renamed, by the same words.
    static bool wants_its_own(const Finding& other) { return other.code == "duplicate_name"; }

    // A frame that moved must not move again.
    bool is_done_by(const Mend& alone) const {
        const auto by_itself = mended(ailing_.project, alone);
        if (by_itself && by_itself.value() == first_) return true;
        const auto once_more = mended(so_far_, alone);
        return once_more && once_more.value() == so_far_;
    }

    bool add(const Mend& more) {
        auto next = mended(std::move(so_far_), more);
        if (!next) return false;
        so_far_ = std::move(next).value();
        way_.edits.insert(way_.edits.end(), more.edits.begin(), more.edits.end());
        has_other_words_ = has_other_words_ || more.words != way_.words;
        return true;
    }

    const Ailing& ailing_;
    Mend way_;
    Project first_;  // mended for the first finding alone
    Project so_far_;
    std::size_t tried_ = 0;  // each costs copies of the project
    bool has_other_words_ = false;
};

using Complaint = std::pair<std::string_view, Subject>;

struct SubjectOrder {
    bool operator()(const Complaint& a, const Complaint& b) const {
        return std::tie(a.first, a.second.kind, a.second.frame, a.second.name) <
               std::tie(b.first, b.second.kind, b.second.frame, b.second.name);
    }
};

using Counts = std::map<Complaint, int, SubjectOrder>;

void count(const Finding& finding, Counts& counts) {
    if (finding.concerns.empty()) ++counts[{finding.code, Subject{}}];
    for (const auto& subject : finding.concerns) ++counts[{finding.code, subject}];
}

Counts counts_of(std::span<const Finding> findings, bool with_notes) {
    Counts counts;
    for (const auto& finding : findings) {
        if (with_notes || finding.severity != Severity::note) count(finding, counts);
    }
    return counts;
}

int count_in(const Counts& counts, const Complaint& complaint) {
    const auto at = counts.find(complaint);
    return at == counts.end() ? 0 : at->second;
}

}  // namespace

std::vector<Mend> ways_to_mend(const Ailing& ailing, std::span<const Finding> alike) {
    return ways_against(ailing, alike.front());
}

std::optional<Mend> way_for_all(const Ailing& ailing, std::span<const Finding> alike, Mend way) {
    auto first = mended(ailing.project, way);
    if (!first) return std::nullopt;
    GrowingMend growing(ailing, std::move(way), std::move(first).value());
    for (const auto& other : alike.subspan(1)) {
        if (!growing.extend(other)) return std::nullopt;
    }
    return std::move(growing).whole();
}

bool keeps_promise(std::span<const Finding> before,
                   std::span<const Finding> after,
                   std::span<const Finding> alike) {
    const auto known = counts_of(before, true);
    const auto left = counts_of(after, true);
    const auto promised = counts_of(alike, true);
    const bool are_gone = std::ranges::all_of(promised, [&](const auto& entry) {
        return count_in(left, entry.first) <= count_in(known, entry.first) - entry.second;
    });
    const auto bad = counts_of(after, false);
    return are_gone && std::ranges::all_of(bad, [&](const auto& entry) {
               return entry.second <= count_in(known, entry.first);
           });
}

engine::Result<Project> mended(Project project, const Mend& mend) {
    for (const auto& edit : mend.edits) {
        auto next = apply(std::move(project), edit);
        if (!next) return next.error();
        project = std::move(next).value();
    }
    return project;
}

std::vector<Finding> findings_where_it_stands(const Project& project,
                                              const Catalogue& catalogue,
                                              const ScanLibrary& scans) {
    return all_findings(project, catalogue, resolve_in_room(project, catalogue, scans));
}

bool is_mended_by(const Ailing& ailing,
                  const ScanLibrary& scans,
                  std::span<const Finding> before,
                  std::span<const Finding> alike,
                  const Mend& mend) {
    const auto project = mended(ailing.project, mend);
    if (!project) return false;
    const auto after = findings_where_it_stands(project.value(), ailing.catalogue, scans);
    return keeps_promise(before, after, alike);
}

std::vector<Mend> mends_of(const Ailing& ailing,
                           const ScanLibrary& scans,
                           std::span<const Finding> before,
                           std::span<const Finding> alike,
                           std::size_t most) {
    std::vector<Mend> kept;
    for (auto& way : ways_to_mend(ailing, alike)) {
        if (kept.size() == most) break;
        auto whole = way_for_all(ailing, alike, std::move(way));
        if (whole && is_mended_by(ailing, scans, before, alike, *whole))
            kept.push_back(std::move(*whole));
    }
    return kept;
}

std::string_view why_no_way(std::string_view code) {
    const auto* row = mend_row(code);
    return row == nullptr ? std::string_view{} : row->why_none;
}

std::vector<std::string_view> codes_with_mends() {
    std::vector<std::string_view> codes;
    std::ranges::transform(mend_rows(), std::back_inserter(codes), &MendRow::code);
    return codes;
}

}  // namespace model
