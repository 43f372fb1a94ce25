// The texts of the shaders, GLSL 3.30.
#pragma once

#include <string_view>

namespace engine::shaders {

// Faces: light from the upper left of the viewer, as in a drawing, and paper showing through with
// distance, so that what lies behind is told from what lies in front. `looks` holds two colours for
// each item: faces, then lines.
inline constexpr std::string_view face_vertex = R"(
layout(location = 0) in vec3 position;
layout(location = 1) in vec3 normal;
layout(location = 2) in uint item;
uniform mat4 to_clip;
uniform samplerBuffer looks;
uniform vec3 light;
uniform vec3 viewer;
uniform vec3 paper;
uniform vec2 haze;
uniform float shade;
uniform vec4 cut;
out vec4 colour;
out float gl_ClipDistance[1];
void main() {
    gl_Position = to_clip * vec4(position, 1.0);
    gl_ClipDistance[0] = cut.w - dot(cut.xyz, position);
    vec4 own = texelFetch(looks, int(item) * 2);
    float lit = 0.72 + 0.27 * max(dot(normal, light), 0.0) + 0.04 * normal.z +
                0.05 * max(dot(normal, viewer), 0.0);
    float nearness = clamp((dot(position, viewer) - haze.x) * haze.y, 0.0, 1.0);
    lit = mix(1.0, lit, shade);
    float far = shade * 0.30 * (1.0 - nearness);
    colour = vec4(mix(min(own.rgb * lit, vec3(1.0)), paper, far), own.a);
}
)";

inline constexpr std::string_view face_fragment = R"(
in vec4 colour;
out vec4 pixel;
void main() { pixel = colour; }
)";

// Lines as screen-wide strips: four corners for each pair of ends. What is shorter than a fraction
// of a pixel is not drawn. Lines are lifted towards the viewer by about half a pixel's size, so
// that they show on the faces they bound, but never by as much as the thinnest sheet. Seen from far
// away lines grow paler, since the two lines of a sheet's edge then fall onto one pixel, and haze
// takes what lies behind; `fading` 0 leaves both off. `cut` is a plane: its normal towards what is
// taken away, and its offset; `shade` 0 leaves faces in their own flat colour.
inline constexpr std::string_view line_vertex = R"(
layout(location = 0) in vec3 from;
layout(location = 1) in vec3 to;
layout(location = 2) in uint item;
uniform mat4 to_clip;
uniform samplerBuffer looks;
uniform vec2 pixels;
uniform float width;
uniform float strength;
uniform float fading;
uniform vec2 depth_rise;
uniform float pixels_per_mm;  // where w is 1
uniform vec3 viewer;
uniform vec3 paper;
uniform vec2 haze;
uniform vec4 cut;
out vec4 colour;
out float gl_ClipDistance[1];
void main() {
    vec4 a = to_clip * vec4(from, 1.0);
    vec4 b = to_clip * vec4(to, 1.0);
    float left_a = cut.w - dot(cut.xyz, from);
    float left_b = cut.w - dot(cut.xyz, to);
    float before_a = a.z + a.w;
    float before_b = b.z + b.w;
    gl_ClipDistance[0] = 1.0;
    if (before_a < 0.0 && before_b < 0.0) {
        gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
        return;
    }
    if (before_a < 0.0) {
        a = mix(a, b, before_a / (before_a - before_b));
        left_a = mix(left_a, left_b, before_a / (before_a - before_b));
    }
    if (before_b < 0.0) {
        b = mix(b, a, before_b / (before_b - before_a));
        left_b = mix(left_b, left_a, before_b / (before_b - before_a));
    }
    vec2 along = (b.xy / b.w - a.xy / a.w) * pixels;
    float size = length(along);
    if (size < 0.5) {
        gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
        return;
    }
    vec2 across = vec2(-along.y, along.x) / size * width / pixels;
    bool is_end = (gl_VertexID & 2) != 0;
    vec4 at = is_end ? b : a;
    at.xy += across * ((gl_VertexID & 1) != 0 ? at.w : -at.w);
    float scale = pixels_per_mm / at.w;
    float lift = clamp(0.45 / scale, 0.02, 0.6);
    at.z -= depth_rise.x * lift + depth_rise.y * lift / max(at.w - lift, lift);
    gl_Position = at;
    gl_ClipDistance[0] = is_end ? left_b : left_a;
    vec4 own = texelFetch(looks, int(item) * 2 + 1);
    float nearness = clamp((dot(is_end ? to : from, viewer) - haze.x) * haze.y, 0.0, 1.0);
    float paling = 0.4 * (1.0 - smoothstep(0.25, 1.25, scale));
    colour = vec4(mix(own.rgb, paper, fading * 0.45 * (1.0 - nearness)),
                  own.a * strength * (1.0 - fading * paling));
}
)";

// The ground's lines fade away from its middle.
inline constexpr std::string_view ground_vertex = R"(
layout(location = 0) in vec3 from;
layout(location = 1) in vec3 to;
uniform mat4 to_clip;
uniform vec2 pixels;
uniform float width;
out vec2 place;
void main() {
    vec4 a = to_clip * vec4(from, 1.0);
    vec4 b = to_clip * vec4(to, 1.0);
    float before_a = a.z + a.w;
    float before_b = b.z + b.w;
    bool is_end = (gl_VertexID & 2) != 0;
    if (before_a < 0.0 && before_b < 0.0) {
        gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
        return;
    }
    vec3 start = from;
    vec3 stop = to;
    if (before_a < 0.0) {
        start = mix(from, to, before_a / (before_a - before_b));
        a = to_clip * vec4(start, 1.0);
    }
    if (before_b < 0.0) {
        stop = mix(to, from, before_b / (before_b - before_a));
        b = to_clip * vec4(stop, 1.0);
    }
    vec2 along = (b.xy / b.w - a.xy / a.w) * pixels;
    vec2 across = vec2(-along.y, along.x) / max(length(along), 1e-6) * width / pixels;
    vec4 at = is_end ? b : a;
    at.xy += across * ((gl_VertexID & 1) != 0 ? at.w : -at.w);
    gl_Position = at;
    place = is_end ? stop.xy : start.xy;
}
)";

inline constexpr std::string_view ground_fragment = R"(
in vec2 place;
uniform vec4 look;
uniform vec2 middle;
uniform vec2 half_size;
out vec4 pixel;
void main() {
    float out_by = length((place - middle) / half_size);
    pixel = vec4(look.rgb, look.a * (1.0 - smoothstep(0.55, 1.0, out_by)));
}
)";

}  // namespace engine::shaders
