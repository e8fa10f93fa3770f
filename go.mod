module steadyneedle

go 1.26

require (
	github.com/expr-lang/expr v1.17.8
	go.yaml.in/yaml/v3 v3.0.6
)
