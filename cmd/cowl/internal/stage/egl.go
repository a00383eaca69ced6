//go:build cgo && linux

package stage

/*
#cgo pkg-config: egl
#include <EGL/egl.h>
#include <EGL/eglext.h>

typedef struct { EGLDisplay display; EGLContext context; const char *failed; EGLint code; } surfaceless;

static surfaceless fail(surfaceless s, const char *step) {
	s.failed = step;
	s.code = eglGetError();
	if (s.display != EGL_NO_DISPLAY) eglTerminate(s.display);
	return s;
}

// openSurfaceless makes an OpenGL 4.1 core context with no window and no
// display current on this thread.
static surfaceless openSurfaceless(void) {
	static const EGLint configWants[] = {EGL_SURFACE_TYPE, 0, EGL_RENDERABLE_TYPE, EGL_OPENGL_BIT, EGL_NONE};
	static const EGLint contextWants[] = {
		EGL_CONTEXT_MAJOR_VERSION, 4, EGL_CONTEXT_MINOR_VERSION, 1,
		EGL_CONTEXT_OPENGL_PROFILE_MASK, EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT, EGL_NONE};
	surfaceless s = {EGL_NO_DISPLAY, EGL_NO_CONTEXT, NULL, EGL_SUCCESS};
	PFNEGLGETPLATFORMDISPLAYEXTPROC platformDisplay =
		(PFNEGLGETPLATFORMDISPLAYEXTPROC)eglGetProcAddress("eglGetPlatformDisplayEXT");
	if (platformDisplay == NULL) return fail(s, "eglGetPlatformDisplayEXT is missing");
	s.display = platformDisplay(EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, NULL);
	if (s.display == EGL_NO_DISPLAY) return fail(s, "no surfaceless platform");
	if (!eglInitialize(s.display, NULL, NULL)) return fail(s, "eglInitialize");
	if (!eglBindAPI(EGL_OPENGL_API)) return fail(s, "no desktop OpenGL");
	EGLConfig config;
	EGLint n = 0;
	if (!eglChooseConfig(s.display, configWants, &config, 1, &n) || n < 1) return fail(s, "no configuration");
	s.context = eglCreateContext(s.display, config, EGL_NO_CONTEXT, contextWants);
	if (s.context == EGL_NO_CONTEXT) return fail(s, "no OpenGL 4.1 core context");
	if (!eglMakeCurrent(s.display, EGL_NO_SURFACE, EGL_NO_SURFACE, s.context)) return fail(s, "eglMakeCurrent");
	return s;
}

static void closeSurfaceless(surfaceless s) {
	eglMakeCurrent(s.display, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
	eglDestroyContext(s.display, s.context);
	eglReleaseThread();
}

static void *procAddress(const char *name) { return (void *)eglGetProcAddress(name); }
*/
import "C"

import (
	"fmt"
	"unsafe"

	"github.com/go-gl/gl/v4.1-core/gl"
)

// openEGL makes a context without a display current on this thread (extension
// EGL_MESA_platform_surfaceless) and returns what closes it. The EGL display
// itself is shared by the whole process and stays.
func openEGL() (func(), error) {
	s := C.openSurfaceless()
	if s.failed != nil {
		return nil, fmt.Errorf("EGL: %s (code 0x%X)", C.GoString(s.failed), int(s.code))
	}
	if err := gl.InitWithProcAddrFunc(eglAddress); err != nil {
		C.closeSurfaceless(s)
		return nil, fmt.Errorf("EGL: %w", err)
	}
	return func() { C.closeSurfaceless(s) }, nil
}

// eglAddress lends C the name for the length of the call, which needs no copy.
func eglAddress(name string) unsafe.Pointer {
	text := append([]byte(name), 0)
	return C.procAddress((*C.char)(unsafe.Pointer(&text[0])))
}
