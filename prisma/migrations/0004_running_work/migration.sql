-- Who is at work on what: asked whenever somebody starts, over all cars, of which few have work running.
CREATE INDEX running_work ON car_operation (car) WHERE status = 'running';
