"""Tables of the trade: YAML data, a source beside every figure -> frozen records; leans on nothing above."""
