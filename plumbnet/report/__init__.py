"""What people see: text for the terminal, JSON, the catalogue of kinds, the schema for editors."""
