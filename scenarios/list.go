package scenarios

import (
	"path"

	"steadyneedle/scenarios/reader"
)

// Listing is what is on the shelf, in the order of names.
type Listing struct {
	Drills         []Item         `json:"drills"`
	Apparatus      []Item         `json:"apparatus"`
	Operators      []OperatorItem `json:"operators"`
	Demonstrations []Item         `json:"demonstrations"`
}

// Item is one drill, apparatus or demonstration.
type Item struct {
	Name  string `json:"name"`
	Title string `json:"title"`
}

// OperatorItem is one scripted operator and the rule that it is meant to break.
type OperatorItem struct {
	Name   string `json:"name"`
	Drill  string `json:"drill"`
	Breaks string `json:"breaks"`
}

// List says what there is. Files that cannot be read are left out and told of in the error, which are
// reader.Faults.
func (s *Shelf) List() (Listing, error) {
	l := s.loading()
	list := Listing{Drills: l.items("drills"), Apparatus: l.items("apparatus"), Operators: []OperatorItem{}, Demonstrations: l.items("demonstrations")}
	for _, drill := range s.folders("operators") {
		for _, name := range s.names(path.Join("operators", drill)) {
			if n, _ := l.file(path.Join("operators", drill, name+".yaml")); n != nil {
				list.Operators = append(list.Operators, OperatorItem{name, drill, scalar(n, "breaks")})
			}
		}
	}
	return list, l.faults.Err()
}

func (l *loading) items(dir string) []Item {
	list := []Item{}
	for _, name := range l.shelf.names(dir) {
		if n, _ := l.file(path.Join(dir, name+".yaml")); n != nil {
			list = append(list, Item{name, scalar(n, "title")})
		}
	}
	return list
}

func scalar(n *reader.Node, key string) string {
	if v := n.Get(key); v != nil && v.Kind == reader.Scalar {
		return v.Text
	}
	return ""
}
