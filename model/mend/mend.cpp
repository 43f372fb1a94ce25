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

// Adds to the way what mends the other finding by the same way; false where there is no such.
bool extend(const Ailing& ailing, const Finding& other, Mend& way) {
    const auto so_far = mended(ailing.project, way);
    if (!so_far) return false;
    const Ailing then{so_far.value(), ailing.catalogue, ailing.resolved};
    const auto ways = ways_against(then, other);
    const auto same = std::ranges::find(ways, way.name, &Mend::name);
    if (same == ways.end()) return false;
    way.edits.insert(way.edits.end(), same->edits.begin(), same->edits.end());
    return true;
}

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
    if (alike.size() > most_mended_together) return {};
    auto ways = ways_against(ailing, alike.front());
    for (const auto& other : alike.subspan(1)) {
        std::erase_if(ways, [&](Mend& way) { return !extend(ailing, other, way); });
    }
    return ways;
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
    return all_findings(project, resolve_in_room(project, catalogue, scans));
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
        if (is_mended_by(ailing, scans, before, alike, way)) kept.push_back(std::move(way));
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
