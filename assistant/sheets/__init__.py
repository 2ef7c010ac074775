"""What is handed out: the picture, the client's, the crew's and the shopping sheet."""
