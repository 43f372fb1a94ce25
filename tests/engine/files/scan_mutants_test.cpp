#include "engine/files/scan_mesh.h"
#include "engine/geometry/triangle_tree.h"

#include "tests/engine/files/allocation_peak.h"
#include "tests/engine/files/scan_checks.h"
#include "tests/support/dice.h"
#include "tests/support/mesh_files.h"

#include <catch2/catch.hpp>

#include <charconv>
#include <cstdlib>
#include <string_view>
#include <system_error>

using namespace engine;
using tests::Dice;
using tests::MeshForm;

namespace {

std::uint32_t size_of(const std::string& bytes) { return static_cast<std::uint32_t>(bytes.size()); }

// ---- one change each; the file is not empty -----------------------------------------------------

void cut_off(std::string& file, Dice& dice) { file.resize(dice.below(size_of(file)) + 1); }

void flip_bytes(std::string& file, Dice& dice, std::uint32_t within) {
    const auto count = 1 + dice.below(8);
    for (std::uint32_t i = 0; i < count; ++i) {
        const auto at = dice.below(std::min(within, size_of(file)));
        const auto bits = static_cast<unsigned char>(1 + dice.below(255));
        file[at] = static_cast<char>(static_cast<unsigned char>(file[at]) ^ bits);
    }
}

void double_chunk(std::string& file, Dice& dice) {
    const auto from = dice.below(size_of(file));
    const auto length = 1 + dice.below(200);
    const auto to = dice.below(size_of(file));
    file.insert(to, file.substr(from, length));
}

void delete_chunk(std::string& file, Dice& dice) {
    const auto from = dice.below(size_of(file));
    const auto length = 1 + dice.below(200);
    file.erase(from, length);
    if (file.empty()) file = "\n";
}

// Where the file has a number in figures, a far larger or an odd one.
void change_figures(std::string& file, Dice& dice) {
    static const std::vector<std::string> numbers = {"0",
                                                     "1",
                                                     "-1",
                                                     "2147483647",
                                                     "4294967295",
                                                     "4294967296",
                                                     "18446744073709551615",
                                                     "9e999",
                                                     "1e-999",
                                                     "nan",
                                                     "-inf",
                                                     "99999999999999999999999",
                                                     "1000000",
                                                     "-7",
                                                     "3.5"};
    const auto from = file.find_first_of("0123456789", dice.below(size_of(file)));
    if (from == file.npos) return;
    const auto behind = std::min(file.find_first_not_of("0123456789.", from), file.size());
    file.replace(from, behind - from, dice.one_of(numbers));
}

// Four bytes that may be a count, a length, an index or a coordinate.
void change_word(std::string& file, Dice& dice) {
    static const std::vector<std::uint32_t> words = {0,          1,          0x7FFFFFFF, 0x80000000,
                                                     0xFFFFFFFF, 0x7F800000, 0xFF800000, 0x7FC00000,
                                                     1'000'000,  0x00FFFFFF, 0x01000000, 255};
    if (file.size() < 4) return;
    const auto at = dice.below(size_of(file) - 3);
    const auto word = dice.one_of(words);
    std::string bytes;
    tests::put(bytes, word);
    file.replace(dice.chance(50) ? at : at / 4 * 4, 4, bytes);
}

std::string mutant_of(std::string file, Dice& dice) {
    const auto changes = 1 + dice.below(3);
    for (std::uint32_t i = 0; i < changes; ++i) {
        switch (dice.below(7)) {
            case 0:
                cut_off(file, dice);
                break;
            case 1:
                flip_bytes(file, dice, size_of(file));
                break;
            case 2:
                flip_bytes(file, dice, 400);
                break;  // the header
            case 3:
                double_chunk(file, dice);
                break;
            case 4:
                delete_chunk(file, dice);
                break;
            case 5:
                change_figures(file, dice);
                break;
            case 6:
                change_word(file, dice);
                break;
        }
    }
    return file;
}

std::uint32_t mutants_of_each_kind() {
    const char* const wanted = std::getenv("BARWRIGHT_MUTANTS");
    if (wanted == nullptr) return 10'000U;
    const std::string_view text = wanted;
    std::uint32_t count = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
    const bool is_number = error == std::errc{} && end == text.data() + text.size();
    if (!is_number || count == 0) FAIL("BARWRIGHT_MUTANTS=" << text << " is no count above 0");
    return count;
}

// What a tree of triangles is asked first.
bool has_sound_tree(const Result<ScanMesh>& mesh) {
    if (!mesh) return true;
    const auto tree = TriangleTree::built(std::span<const ScanPoint>(mesh->points),
                                          std::span<const ScanTriangle>(mesh->triangles), {});
    if (!tree || tree->triangle_count() != mesh->triangles.size()) return false;
    for (std::size_t axis = 0; axis < 3; ++axis) {
        if (tree->bounds().lo[axis] != static_cast<double>(mesh->lo[axis])) return false;
        if (tree->bounds().hi[axis] != static_cast<double>(mesh->hi[axis])) return false;
    }
    return true;
}

constexpr std::size_t small_constant = std::size_t{64} << 10U;

}  // namespace

TEST_CASE("broken mesh files of every kind are read whole or refused, in ten times their memory",
          "[scan][mutants]") {
    const auto form =
        GENERATE(from_range(std::begin(tests::mesh_forms), std::end(tests::mesh_forms)));
    CAPTURE(tests::name_of(form));
    const std::string files[] = {mesh_file(tests::wavy_sheet(1, 1), form),
                                 mesh_file(tests::wavy_sheet(3, 2), form),
                                 mesh_file(tests::wavy_sheet(6, 5), form)};
    std::uint32_t read = 0;
    std::uint32_t refused = 0;
    for (std::uint32_t seed = 0; seed < mutants_of_each_kind(); ++seed) {
        Dice dice{seed};
        const auto bytes = mutant_of(files[dice.below(3)], dice);
        const tests::AllocationPeak peak;
        const auto mesh = read_scan_mesh_bytes(bytes, tests::ending_of(form));
        const auto taken = bytes.size() + peak.bytes();  // the bytes would be read from a file
        const auto broken = tests::broken_promise(mesh);
        const bool is_sound = has_sound_tree(mesh);
        if (taken > 10 * bytes.size() + small_constant || !broken.empty() || !is_sound) {
            CAPTURE(seed, broken, taken, bytes.size(), is_sound);
            FAIL("the mutant of this seed");
        }
        ++(mesh ? read : refused);
    }
    // Enough of both that neither is untested.
    CHECK(read >= (read + refused) / 50);
    CHECK(refused >= (read + refused) / 5);
}
