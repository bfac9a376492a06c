using Microsoft.AspNetCore.Identity;

namespace Workshop.Web.Features.SignIn;

/// <summary>Length beats rules about characters (NIST SP 800-63B, section 5.1.1); guessing locks the account for a while.</summary>
internal static class SignInRules
{
    public const int ShortestPassword = 12;
    public const int LeastDifferent = 6;

    public static void Configure(IdentityOptions options)
    {
        options.Password.RequiredLength = ShortestPassword;
        options.Password.RequireDigit = false;
        options.Password.RequireLowercase = false;
        options.Password.RequireUppercase = false;
        options.Password.RequireNonAlphanumeric = false;
        options.Password.RequiredUniqueChars = LeastDifferent;
        // Names are names: any letter of any language, and spaces.
        options.User.AllowedUserNameCharacters = "";
        options.Lockout.MaxFailedAccessAttempts = 8;
        options.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(5);
    }
}
