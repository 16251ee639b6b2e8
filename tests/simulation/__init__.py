"""The real engine, outbox and store on a virtual clock, with invented people and every fault we can think of.

`world` lets it all happen, `line` is the bad network, `disk` the process that dies and the disk that fills,
`people` and `coaches` answer, `telling` is how clients tell counts, `invariants` looks after every event, `planted`
breaks the code on purpose.
One run again, with all that was said: `python -m tests.bench.simulation --seed N --journal`.
"""
