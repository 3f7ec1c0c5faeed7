// Every test has a folder of its own as the current one, and some measure memory: one after another.
[assembly: Xunit.v3.Parallelization(Mode = Xunit.Sdk.ParallelMode.None)]
