// Where the scene is seen from: plain maths in mm, z up, no OpenGL.
#pragma once

#include <glm/mat4x4.hpp>
#include <glm/vec2.hpp>
#include <glm/vec3.hpp>

#include <limits>
#include <optional>

namespace engine {

// A box in mm around what is to be seen. Starts out empty; lo > hi means empty.
struct SceneBounds {
    glm::dvec3 lo{std::numeric_limits<double>::infinity()};
    glm::dvec3 hi{-std::numeric_limits<double>::infinity()};

    bool operator==(const SceneBounds&) const = default;
};

bool is_empty(const SceneBounds& bounds);
SceneBounds hull(const SceneBounds& a, const SceneBounds& b);
SceneBounds with_point(const SceneBounds& bounds, const glm::dvec3& point);

// The picture's size in pixels. Pixel (0, 0) is the upper left corner, y runs down; both may be
// fractions.
struct Viewport {
    int width = 1;
    int height = 1;

    bool operator==(const Viewport&) const = default;
};

enum class Projection { perspective, parallel };

// Front looks along +y (x to the right), left along +x (y to the left), top along -z (x to the
// right, y up), corner from the right-hand front corner above.
enum class ViewFrom { front, left, top, corner };

// Turns about a target. Turn 0 looks along +y; a growing turn walks round the target
// counter-clockwise seen from above. Tilt 0 is level, +pi/2 looks straight down.
struct Camera {
    glm::dvec3 target{0.0};
    double distance = 2000.0;                   // from the eye to the target, mm
    double turn = 0.0;                          // radians
    double tilt = 0.0;                          // radians, -pi/2 .. +pi/2
    double field_of_view = 0.5235987755982988;  // vertical, radians: 30 degrees
    Projection projection = Projection::perspective;

    bool operator==(const Camera&) const = default;
};

struct Ray {
    glm::dvec3 origin{0.0};
    glm::dvec3 direction{0.0, 1.0, 0.0};  // unit
};

// Straight views are parallel, as in a workshop drawing; the corner view is in perspective. The
// target and distance are taken from `before`.
Camera seen_from(ViewFrom view, const Camera& before = {});

// Target and distance so that the whole box shows with a margin (a share of the picture). An empty
// box leaves the camera as it was.
Camera fitted(const Camera& camera,
              const SceneBounds& box,
              Viewport viewport,
              double margin = 0.06);

Camera orbited(const Camera& camera, double turn_by, double tilt_by);

// So that a point at the target's depth follows the pointer.
Camera panned(const Camera& camera, glm::dvec2 by_pixels, Viewport viewport);

// Nearer for factors above 1. What lies under `at` (at the target's depth) stays there.
Camera zoomed(const Camera& camera, double factor, glm::dvec2 at, Viewport viewport);

glm::dvec3 eye_of(const Camera& camera);
glm::dvec3 right_of(const Camera& camera);    // unit, to the right in the picture
glm::dvec3 up_of(const Camera& camera);       // unit, upwards in the picture
glm::dvec3 forward_of(const Camera& camera);  // unit, away from the viewer

// World to clip space. `box` is everything that may be drawn: the near and far planes are put close
// around it.
glm::dmat4 view_projection(const Camera& camera, const SceneBounds& box, Viewport viewport);

Ray ray_through(const Camera& camera, glm::dvec2 pixel, Viewport viewport);

// Where a point shows; none when it is behind the eye.
std::optional<glm::dvec2> pixel_of(const Camera& camera,
                                   const glm::dvec3& point,
                                   Viewport viewport);

// Size in mm of one pixel at the target's depth.
double mm_per_pixel(const Camera& camera, Viewport viewport);

}  // namespace engine
