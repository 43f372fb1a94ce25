// Compares a text with tests/approved/<name>. On a difference the test fails and the text received
// is left beside the approved one as <name>.received; with APPROVE=1 in the environment the
// approved file is rewritten instead. Read the difference before you accept it: makers cut to these
// numbers.
#pragma once

#include <catch2/catch.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace tests {

inline void check_approved(const std::string& name, const std::string& received) {
    const auto approved_file = std::filesystem::path(BARWRIGHT_TESTS) / "approved" / name;
    const auto write = [&](const std::filesystem::path& file) {
        std::filesystem::create_directories(file.parent_path());
        std::ofstream(file, std::ios::binary) << received;
    };
    if (std::getenv("APPROVE") != nullptr) write(approved_file);
    std::ifstream in(approved_file, std::ios::binary);
    const std::string approved{std::istreambuf_iterator<char>(in), {}};
    if (received != approved) write(approved_file.string() + ".received");
    CAPTURE(name);
    CHECK(received == approved);
}

}  // namespace tests
