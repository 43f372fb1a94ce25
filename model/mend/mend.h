// What can be done about a finding by edits, in a maker's words: each mend that is offered has been
// tried, and does what it promises.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/project/edit.h"
#include "model/resolve/resolved.h"
#include "model/room/scans.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace model {

struct Mend {
    std::string name;         // stable, of its kind: "recipe flush", "move +x"
    std::string words;        // what it does: "Join by corner cleat"
    std::vector<Edit> edits;  // one step of the history
};

// A project and what follows from it, for looking for mends.
struct Ailing {
    const Project& project;
    const Catalogue& catalogue;
    const Resolved& resolved;
};

// Of more findings none is tried together with the others, unless one stated shop serves them all:
// each try copies the project, while the window waits.
inline constexpr std::size_t most_mended_together = 40;

// What may be tried against the first of findings of one code that say the same, the mildest first.
// `alike` is not empty.
std::vector<Mend> ways_to_mend(const Ailing& ailing, std::span<const Finding> alike);

// The way with what mends the others too; none where one of them cannot be mended by it, or where
// they would be too many to try. Whether it does is found by trying, with `keeps_promise`.
std::optional<Mend> way_for_all(const Ailing& ailing, std::span<const Finding> alike, Mend way);

// Whether of the findings `before`, `alike` are gone in `after`, and no error or warning has come.
bool keeps_promise(std::span<const Finding> before,
                   std::span<const Finding> after,
                   std::span<const Finding> alike);

// The project with the mend; an error where one of its edits is refused.
engine::Result<Project> mended(Project project, const Mend& mend);

// All findings of a project where it stands: of resolve, of the room and of the bars.
std::vector<Finding> findings_where_it_stands(const Project& project,
                                              const Catalogue& catalogue,
                                              const ScanLibrary& scans);

// Whether the mend does what it promises: works the whole project out with it.
bool is_mended_by(const Ailing& ailing,
                  const ScanLibrary& scans,
                  std::span<const Finding> before,
                  std::span<const Finding> alike,
                  const Mend& mend);

// The ways that keep their promise, at most so many. Works the project out once for each way that
// is tried: not for every frame of a window.
std::vector<Mend> mends_of(const Ailing& ailing,
                           const ScanLibrary& scans,
                           std::span<const Finding> before,
                           std::span<const Finding> alike,
                           std::size_t most = 4);

// What there is to be done against findings of that code beside ways: empty where there are ways;
// else why the program cannot do it, in words for the user. For an unknown code: empty too.
std::string_view why_no_way(std::string_view code);

// All codes that ways or reasons are known for, rising.
std::vector<std::string_view> codes_with_mends();

}  // namespace model
