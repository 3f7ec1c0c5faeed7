namespace Plenum.Cli;

/// <summary>What a person who only types <c>plenum</c> is told.</summary>
internal static class WhatNext
{
    public const string Text = """
        Plenum breaks a project down into all its work and shows how it is really going.

        Try it on the invented plant that comes with it:
          plenum demo my-plant                        write its files into the folder my-plant
          plenum new my-plant.plenum                  make an empty project
          plenum import my-plant.plenum my-plant      take the files in: all of them or nothing
          plenum check my-plant.plenum                what the audit finds
          plenum tree my-plant.plenum --level 3       the breakdown, with its gaps
          plenum accounts my-plant.plenum             how every control account is going
          plenum precision my-plant.plenum            how closely that can be known, and what to split
          plenum forecast my-plant.plenum             where it will end

        With your own project: bring the same files (docs/files.md says what each holds).
        plenum COMMAND --help says more. Every command that answers has --json.

        Decision support, not a contractual or certified statement.

        """;
}
