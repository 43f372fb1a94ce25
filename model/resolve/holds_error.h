// Whether anything was found that keeps a project from being built.
#pragma once

#include "model/resolve/finding.h"

#include <algorithm>
#include <span>

namespace model {

inline bool holds_error(std::span<const Finding> findings) {
    return std::ranges::find(findings, Severity::error, &Finding::severity) != findings.end();
}

}  // namespace model
