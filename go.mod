module steadyneedle

go 1.26.0

require (
	github.com/expr-lang/expr v1.17.8
	github.com/hajimehoshi/ebiten/v2 v2.8.8
	go.yaml.in/yaml/v3 v3.0.6
	golang.org/x/image v0.47.0
)

require (
	github.com/ebitengine/gomobile v0.0.0-20240911145611-4856209ac325 // indirect
	github.com/ebitengine/hideconsole v1.0.0 // indirect
	github.com/ebitengine/purego v0.8.0 // indirect
	github.com/jezek/xgb v1.1.1 // indirect
	golang.org/x/sync v0.24.0 // indirect
	golang.org/x/sys v0.49.0 // indirect
	golang.org/x/text v0.43.0 // indirect
)
