// The planes on which mirror images within a frame stand: see the edit MirrorBars.
#pragma once

#include "model/project/change.h"
#include "model/project/mirror.h"

#include <array>
#include <string>

namespace model {

class MirrorPlanes {
public:
    MirrorPlanes(const Project& project,
                 Frame& frame,
                 const MirrorBars& edit,
                 const PlanePlaces& places)
        : project_{project},
          frame_{frame},
          edit_{edit},
          places_{places},
          mirror_{.axis = edit.axis, .opposite = {}} {}

    // Those about whose middle all is mirrored. To be called first.
    Changed find_sides();

    // What lies opposite of a plane on which a bar stands; is put into the frame where it is not
    // there.
    Changed find_opposite(const std::string& plane, const std::string& bar);

    const Mirror& mirror() const { return mirror_; }

private:
    void take_outermost();
    std::string add_plane(const Plane& plane);
    engine::Error refused(const std::string& why) const;

    const Project& project_;
    Frame& frame_;
    const MirrorBars& edit_;
    const PlanePlaces& places_;
    Mirror mirror_;
    std::array<std::string, 2> sides_;
    Nm sum_ = 0;
};

}  // namespace model
