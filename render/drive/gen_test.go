package drive
import ("testing";"os")
func TestGen(t *testing.T){ n,at:=upToPanel(t); b,_:=os.ReadFile(n); os.WriteFile("/tmp/try/to-panel.tape",b,0o644); t.Log(at) }
