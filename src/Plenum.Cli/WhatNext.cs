namespace Plenum.Cli;

/// <summary>What a person who asks <c>plenum</c> for help is told below the list of commands.</summary>
internal static class WhatNext
{
    public const string Text = """
        plenum alone shows the invented plant that comes with it in a browser. The same by commands:
          plenum demo my-plant                        write its files into the folder my-plant
          plenum new my-plant.plenum                  make an empty project
          plenum import my-plant.plenum my-plant      take the files in: all of them or nothing
          plenum check my-plant.plenum                what the audit finds
          plenum tree my-plant.plenum --level 3       the breakdown, with its gaps
          plenum accounts my-plant.plenum             how every control account is going
          plenum precision my-plant.plenum            how closely that can be known, and what to split
          plenum forecast my-plant.plenum             where it will end
          plenum network my-plant.plenum              when, and what drives that
          plenum assess my-plant.plenum               whether its schedule can be relied on

        With your own project: bring the same files (docs/files.md says what each holds).
        plenum COMMAND --help says more. Every command that answers has --json.

        Decision support, not a contractual or certified statement.

        """;
}
