using Microsoft.AspNetCore.Mvc.ApplicationModels;

namespace Workshop.Web.Http;

/// <summary>The policy of every page folder and of the pages that ask for more. A test lists every endpoint with its policy.</summary>
internal static class PagePolicies
{
    public static void Apply(PageConventionCollection pages)
    {
        pages.AuthorizeFolder("/", Policies.Reads);
        pages.AllowAnonymousToPage("/SignIn/SignIn");
        pages.AllowAnonymousToPage("/Errors/Error");
        pages.AllowAnonymousToPage("/Records/Linked");
        pages.AuthorizePage("/Records/Send", Policies.Books);
        pages.AuthorizePage("/Bookings/Book", Policies.Books);
        pages.AuthorizePage("/JobCards/CheckIn", Policies.ChecksIn);
        pages.AuthorizePage("/JobCards/Plan", Policies.Books);
        pages.AuthorizePage("/Comebacks/Index", Policies.Manages);
        pages.AuthorizePage("/Motorcycles/New", Policies.Books);
        pages.AuthorizePage("/Motorcycles/Edit", Policies.Books);
        pages.AuthorizePage("/Replan/Index", Policies.Manages);
        pages.AuthorizePage("/Utilisation/Index", Policies.Manages);
        pages.AuthorizePage("/Drift/Index", Policies.Manages);
        pages.AuthorizePage("/Drift/Fit", Policies.Manages);
        pages.AuthorizePage("/EngineModels/Edit", Policies.Manages);
        pages.AuthorizePage("/EngineModels/EditSection", Policies.Manages);
        pages.AuthorizePage("/EngineModels/New", Policies.Manages);
        pages.AuthorizePage("/Imports/Readings", Policies.Manages);
        pages.AuthorizePage("/Imports/History", Policies.Manages);
        pages.AuthorizePage("/Shims/Stocking", Policies.Manages);
        pages.AuthorizePage("/Tooling/New", Policies.Manages);
        pages.AuthorizePage("/Tooling/Adapter", Policies.Manages);
        pages.AuthorizePage("/Stores/New", Policies.KeepsStores);
        pages.AuthorizePage("/Stores/Edit", Policies.KeepsStores);
        pages.AuthorizePage("/Stores/Book", Policies.KeepsStores);
        pages.AuthorizePage("/Stores/Scan", Policies.KeepsStores);
        pages.AuthorizePage("/Stores/Check", Policies.Manages);
        pages.AuthorizePage("/Imports/GoodsIn", Policies.KeepsStores);
        pages.AuthorizeFolder("/Contacts", Policies.Books);
        pages.AuthorizePage("/Contacts/Template", Policies.Manages);
        pages.AuthorizePage("/Estimates/Prices", Policies.Books);
        pages.AuthorizePage("/Estimates/ImportPrices", Policies.Manages);
        pages.AuthorizePage("/Estimates/Send", Policies.Books);
        pages.AuthorizePage("/Findings/Waiting", Policies.Books);
        pages.AuthorizeFolder("/People", Policies.Books);
        pages.AuthorizePage("/People/New", Policies.Manages);
        pages.AuthorizeFolder("/Resources", Policies.Books);
        pages.AuthorizePage("/Resources/New", Policies.Manages);
        pages.AuthorizePage("/Intervals/PutOff", Policies.Books);
        pages.AuthorizePage("/Motorcycles/Odometer", Policies.Books);
        pages.AuthorizePage("/Motorcycles/ReplaceOdometer", Policies.Books);
        pages.AuthorizePage("/Motorcycles/DoneItems", Policies.Books);
        pages.AuthorizePage("/Motorcycles/PartChanges", Policies.Measures);
    }
}
