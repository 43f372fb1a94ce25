#include "engine/render/gl_canvas.h"

#include <glad/gl.h>

#include <algorithm>
#include <cassert>
#include <cstddef>

namespace engine {
namespace {

int capped_samples(int wanted) {
    GLint most = 1;
    glGetIntegerv(GL_MAX_SAMPLES, &most);
    return std::clamp(wanted, 1, std::max(1, most));
}

void make_texture(const GlTexture& texture, Viewport size) {
    glBindTexture(GL_TEXTURE_2D, texture.name());
    glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, size.width, size.height, 0, GL_RGBA, GL_UNSIGNED_BYTE,
                 nullptr);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    glBindTexture(GL_TEXTURE_2D, 0);
}

void make_store(const GlRenderbuffer& store, GLenum format, Viewport size, int samples) {
    glBindRenderbuffer(GL_RENDERBUFFER, store.name());
    glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples > 1 ? samples : 0, format, size.width,
                                     size.height);
    glBindRenderbuffer(GL_RENDERBUFFER, 0);
}

void attach(const GlRenderbuffer& store, GLenum where) {
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, where, GL_RENDERBUFFER, store.name());
}

}  // namespace

GlCanvas::GlCanvas(Viewport viewport, int samples_wanted)
    : viewport_{std::max(1, viewport.width), std::max(1, viewport.height)},
      texture_{GlTexture::create()},
      depth_{GlRenderbuffer::create()},
      framebuffer_{GlFramebuffer::create()} {
    const int samples = capped_samples(samples_wanted);
    is_smoothed_ = samples > 1;
    make_texture(texture_, viewport_);
    make_store(depth_, GL_DEPTH_COMPONENT24, viewport_, samples);
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer_.name());
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, texture_.name(), 0);
    if (is_smoothed_) {
        colour_ = GlRenderbuffer::create();
        make_store(colour_, GL_RGBA8, viewport_, samples);
        samples_framebuffer_ = GlFramebuffer::create();
        glBindFramebuffer(GL_FRAMEBUFFER, samples_framebuffer_.name());
        attach(colour_, GL_COLOR_ATTACHMENT0);
    }
    attach(depth_, GL_DEPTH_ATTACHMENT);
    assert(glCheckFramebufferStatus(GL_FRAMEBUFFER) == GL_FRAMEBUFFER_COMPLETE);
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
}

void GlCanvas::begin() const {
    const auto& onto = is_smoothed_ ? samples_framebuffer_ : framebuffer_;
    glBindFramebuffer(GL_FRAMEBUFFER, onto.name());
    glViewport(0, 0, viewport_.width, viewport_.height);
}

void GlCanvas::finish() const {
    if (is_smoothed_) {
        glBindFramebuffer(GL_READ_FRAMEBUFFER, samples_framebuffer_.name());
        glBindFramebuffer(GL_DRAW_FRAMEBUFFER, framebuffer_.name());
        glBlitFramebuffer(0, 0, viewport_.width, viewport_.height, 0, 0, viewport_.width,
                          viewport_.height, GL_COLOR_BUFFER_BIT, GL_NEAREST);
    }
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
}

Image GlCanvas::read_back() const {
    const auto width = static_cast<std::size_t>(viewport_.width);
    const auto height = static_cast<std::size_t>(viewport_.height);
    Image image{.width = viewport_.width, .height = viewport_.height};
    image.rgba.resize(4 * width * height);
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer_.name());
    glPixelStorei(GL_PACK_ALIGNMENT, 1);
    glReadPixels(0, 0, viewport_.width, viewport_.height, GL_RGBA, GL_UNSIGNED_BYTE,
                 image.rgba.data());
    glPixelStorei(GL_PACK_ALIGNMENT, 4);
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
    // OpenGL's first row is the lowest.
    const auto row = [&](std::size_t y) {
        return image.rgba.begin() + static_cast<std::ptrdiff_t>(4 * width * y);
    };
    for (std::size_t y = 0; y < height / 2; ++y)
        std::swap_ranges(row(y), row(y + 1), row(height - 1 - y));
    return image;
}

}  // namespace engine
