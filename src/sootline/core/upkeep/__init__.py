"""Between calls: recalls, inspections, repairs, contractors, what is due, people, supplies."""
