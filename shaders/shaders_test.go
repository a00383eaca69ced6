package shaders

import (
	"fmt"
	"strings"
	"testing"
)

func TestSources(t *testing.T) {
	for _, s := range []Source{Cloth(), Form(), QuickCloth(), QuickForm(), VertexCloth(), Panel(), Line(), Depth(),
		SheerDepth(), SkyLook()} {
		for kind, text := range map[string]string{"vertex": s.Vertex, "fragment": s.Fragment} {
			if !strings.HasPrefix(text, "#version 410 core\n") || strings.Count(text, "void main()") != 1 {
				t.Errorf("%s %s: want the version first and one main, got %d main in %.40q", s.Name, kind,
					strings.Count(text, "void main()"), text)
			}
			if open, shut := strings.Count(text, "{"), strings.Count(text, "}"); open != shut {
				t.Errorf("%s %s: %d opening and %d closing braces", s.Name, kind, open, shut)
			}
		}
	}
}

func TestRampStepsMatchShader(t *testing.T) {
	want := fmt.Sprintf("const int rampSteps = %d;", RampSteps)
	if got := Cloth().Fragment; !strings.Contains(got, want) {
		t.Errorf("cloth.frag lacks %q", want)
	}
}

func TestSkyCountMatchesShader(t *testing.T) {
	want := fmt.Sprintf("const int skyCount = %d;", SkyCount)
	if got := SkyLook().Vertex; !strings.Contains(got, want) {
		t.Errorf("sky.glsl lacks %q", want)
	}
}
