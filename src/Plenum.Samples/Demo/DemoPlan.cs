namespace Plenum.Samples.Demo;

/// <summary>The whole demo project while it is being made; each step of the making fills in its part.</summary>
internal sealed class DemoPlan
{
    private readonly Dictionary<string, Component> _components;

    public DemoPlan(List<PlantSystem> systems)
    {
        Systems = systems;
        Subsystems = systems.SelectMany(system => system.Subsystems).ToList();
        Accounts = Subsystems.SelectMany(subsystem => subsystem.Accounts).ToList();
        Components = Subsystems.SelectMany(subsystem => subsystem.Components).ToList();
        _components = Components.ToDictionary(component => component.Code, StringComparer.Ordinal);
    }

    public List<PlantSystem> Systems { get; }
    public List<Subsystem> Subsystems { get; }

    /// <summary>The control accounts in order of their elements.</summary>
    public List<Account> Accounts { get; }
    public List<Component> Components { get; }

    /// <summary>The control accounts and, behind them, what stands in none.</summary>
    public IEnumerable<Account> Holders =>
        Accounts.Concat(
            Components
                .Select(component => component.Account)
                .Where(account => !account.Exists)
                .Distinct()
        );

    /// <summary>All packages in depth-first order.</summary>
    public List<Package> Packages { get; } = [];

    public Component Component(string code) => _components[code];

    /// <summary>The first lot of an activity of a component.</summary>
    public Package Package(string component, string activity) =>
        Component(component).FirstOf(activity)
        ?? throw new ArgumentException(
            $"{component} has no package for {activity}",
            nameof(activity)
        );
}
