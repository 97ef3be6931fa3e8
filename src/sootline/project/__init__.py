"""How the web app is put together: settings, addresses, the door for the server."""
