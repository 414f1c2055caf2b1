"""What people and programs see. Writers only write: what they show was worked out before they are called."""
