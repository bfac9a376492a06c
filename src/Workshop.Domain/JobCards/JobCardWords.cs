namespace Workshop.Domain.JobCards;

/// <summary>How states and likelihoods are said on a page.</summary>
public static class JobCardWords
{
    public static string Spoken(this JobCardState state) => state switch
    {
        JobCardState.Booked => "booked",
        JobCardState.CheckedIn => "checked in",
        JobCardState.SignedOff => "signed off",
        JobCardState.Cancelled => "cancelled",
        JobCardState.NoShow => "did not come",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, null),
    };

    public static string Spoken(this Likelihood likelihood) => likelihood switch
    {
        Likelihood.Certain => "certain",
        Likelihood.Likely => "likely",
        Likelihood.Possible => "possible",
        _ => throw new ArgumentOutOfRangeException(nameof(likelihood), likelihood, null),
    };

    public static string Spoken(this WaitsFor waits) => waits switch
    {
        WaitsFor.Shims => "shims",
        WaitsFor.OtherParts => "parts",
        WaitsFor.OwnersWord => "the owner's word",
        _ => throw new ArgumentOutOfRangeException(nameof(waits), waits, null),
    };
}
