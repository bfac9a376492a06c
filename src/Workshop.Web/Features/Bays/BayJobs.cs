namespace Workshop.Web.Features.Bays;

/// <summary>Jobs of a bay to choose from.</summary>
public sealed record BayJobs(BayModel Screen, IReadOnlyList<GetBay.Job> Jobs);
