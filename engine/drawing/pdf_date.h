// The date that a file says it was made at, so that the same drawing is the same file.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace engine {

// "2020-01-01T00:00:00Z" for seconds since 1970 in digits, as in SOURCE_DATE_EPOCH
// (reproducible-builds.org, specification 1.1). No value: these are no such seconds, or lie beyond
// the year 9999.
std::optional<std::string> date_of_epoch(std::string_view seconds);

// That of the environment's SOURCE_DATE_EPOCH, or else one that never changes.
std::string date_of_file();

}  // namespace engine
