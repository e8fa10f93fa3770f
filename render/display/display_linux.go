package display

import "syscall"

func init() {
	if open(get("DISPLAY")) || get("WAYLAND_DISPLAY") != "" {
		return
	}
	const message = "steadyneedle: no display can be reached (DISPLAY is not set, or nothing answers there). " +
		"Without one: needle run reverse-lay --operator clean, or xvfb-run steadyneedle …\n"
	syscall.Write(2, []byte(message))
	syscall.Exit(2)
}

func get(name string) string {
	v, _ := syscall.Getenv(name)
	return v
}

// open reports whether a local X server answers; a display on another machine is believed.
func open(name string) bool {
	if name == "" {
		return false
	}
	if name[0] != ':' {
		return true
	}
	number := name[1:]
	for i := range number {
		if number[i] == '.' {
			number = number[:i]
			break
		}
	}
	fd, err := syscall.Socket(syscall.AF_UNIX, syscall.SOCK_STREAM, 0)
	if err != nil {
		return true
	}
	defer syscall.Close(fd)
	path := "/tmp/.X11-unix/X" + number
	if syscall.Connect(fd, &syscall.SockaddrUnix{Name: path}) == nil {
		return true
	}
	return syscall.Connect(fd, &syscall.SockaddrUnix{Name: "\x00" + path}) == nil
}
