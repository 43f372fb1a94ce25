// Writes what the outsiders of npm.sh check: GLB and OBJ files of samples, of a piece of every
// shape and of random frames, and each piece's exact volume. Usage: export_for_oracles FOLDER
#include "model/resolve/piece_solid.h"
#include "model/schedule/export.h"

#include "tests/oracle/oracle_projects.h"

#include <cstdio>

namespace {

bool write(const tests::OracleJob& job, const std::filesystem::path& file) {
    if (job.resolved.pieces.empty()) return true;
    const auto with = [&](const char* ending) {
        auto path = file;
        path += ending;
        return std::ofstream{path, std::ios::binary};
    };
    with(".glb") << model::glb_file(job.project, job.catalogue, job.resolved);
    with(".obj") << model::obj_file(job.project, job.catalogue, job.resolved);
    auto volumes = with(".volumes");
    volumes.precision(17);
    for (model::Index i = 0; i < job.resolved.pieces.size(); ++i)
        volumes << model::piece_volume(job.resolved, job.catalogue, i) << "\n";
    return volumes.good();
}

}  // namespace

int main(int count, char** arguments) {
    if (count != 2) return 2;
    const std::filesystem::path folder = arguments[1];
    bool is_written = write(tests::hand_made_job(), folder / "every_shape");
    for (const auto& file : tests::sample_files())
        is_written = is_written && write(tests::sample_job(file), folder / file.stem());
    for (std::uint32_t seed = 0; seed < tests::frames_to_check(); seed += 10)
        is_written = is_written &&
                     write(tests::random_job(seed), folder / ("random_" + std::to_string(seed)));
    return is_written ? 0 : 1;
}
