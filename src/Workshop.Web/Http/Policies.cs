using Microsoft.AspNetCore.Authorization;
using Workshop.Domain.People;

namespace Workshop.Web.Http;

/// <summary>Who may do what. Every page folder and every route group names one of these; without one, only the signed-in.</summary>
public static class Policies
{
    /// <summary>Everybody who is signed in reads what the workshop does.</summary>
    public const string Reads = "reads";

    /// <summary>Books and cancels visits, keeps motorcycles and owners, reaches owners.</summary>
    public const string Books = "books";

    /// <summary>Takes a motorcycle in: whoever is at the door.</summary>
    public const string ChecksIn = "checks-in";

    /// <summary>Says how far a visit is and where it stands: whoever is beside it.</summary>
    public const string TellsProgress = "tells-progress";

    /// <summary>Takes goods into the stores: whoever opens the parcel.</summary>
    public const string KeepsStores = "keeps-stores";

    /// <summary>Says what is ordered of whom, and places orders: whoever may spend the workshop's money.</summary>
    public const string Orders = "orders";

    /// <summary>Measures, tightens, signs off.</summary>
    public const string Measures = "measures";

    /// <summary>Changes engine models, imports, sees the fleet.</summary>
    public const string Manages = "manages";

    /// <summary>Whether somebody sees how owners are reached: those who book.</summary>
    public static bool SeesContactData(Actor actor)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return actor.Is(Roles.Advisor) || actor.Is(Roles.Manager);
    }

    public static void Add(AuthorizationOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        options.AddPolicy(Reads, p => p.RequireRole(Roles.All));
        options.AddPolicy(Books, p => p.RequireRole(Roles.Advisor, Roles.Manager));
        options.AddPolicy(ChecksIn, p => p.RequireRole(Roles.All));
        options.AddPolicy(TellsProgress, p => p.RequireRole(Roles.All));
        options.AddPolicy(KeepsStores, p => p.RequireRole(Roles.All));
        options.AddPolicy(Orders, p => p.RequireRole(Roles.Advisor, Roles.Manager));
        options.AddPolicy(Measures, p => p.RequireRole(Roles.Technician, Roles.Manager));
        options.AddPolicy(Manages, p => p.RequireRole(Roles.Manager));
        options.FallbackPolicy = new AuthorizationPolicyBuilder().RequireRole(Roles.All).Build();
    }
}
