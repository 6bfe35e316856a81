package web

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"time"
)

// closing is how long questions under way may take to end when the server stops.
const closing = 3 * time.Second

// Open serves the handler on 127.0.0.1 until ctx ends, then lets questions under
// way finish. Port 0 takes a free one. Ready is called with the address to open,
// "http://127.0.0.1:41234/", once questions are answered; it may be nil.
func Open(ctx context.Context, port int, handler http.Handler, ready func(address string)) error {
	if port < 0 || port > 65535 {
		return fmt.Errorf("port %d is outside 0 to 65535; leave it out for a free one", port)
	}
	var config net.ListenConfig
	listener, err := config.Listen(ctx, "tcp4", fmt.Sprintf("127.0.0.1:%d", port))
	if err != nil {
		return fmt.Errorf("port %d cannot be used (%w); give another, or leave it out for a free one", port, err)
	}
	server := &http.Server{Handler: handler, ReadHeaderTimeout: 10 * time.Second, IdleTimeout: 2 * time.Minute, MaxHeaderBytes: 64 << 10}
	served := make(chan error, 1)
	go func() { served <- server.Serve(listener) }()
	if ready != nil {
		ready("http://" + listener.Addr().String() + "/")
	}
	select {
	case err := <-served:
		return err
	case <-ctx.Done():
	}
	end, cancel := context.WithTimeout(context.WithoutCancel(ctx), closing)
	defer cancel()
	if err := server.Shutdown(end); err != nil {
		if closeErr := server.Close(); closeErr != nil {
			return errors.Join(err, closeErr)
		}
	}
	if err := <-served; !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}
