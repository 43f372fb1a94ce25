#include "model/room/resolve_in_room.h"

#include "model/resolve/resolve.h"
#include "model/room/clearance.h"

#include <iterator>
#include <utility>

namespace model {

Resolved resolve_in_room(const Project& project,
                         const Catalogue& catalogue,
                         const ScanLibrary& scans) {
    auto resolved = resolve(project, catalogue);
    auto findings = room_findings(project, catalogue, resolved, scans);
    resolved.findings.insert(resolved.findings.end(), std::make_move_iterator(findings.begin()),
                             std::make_move_iterator(findings.end()));
    return resolved;
}

}  // namespace model
