@echo off
rem Starts Mottle from wherever it was unpacked. JAVA_HOME and JAVA_OPTS are honoured.
setlocal
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
rem -XX:Tier4...: compile for the long run only what runs long; most runs last a second
set "LATE=-XX:Tier4InvocationThreshold=50000 -XX:Tier4MinInvocationThreshold=6000 -XX:Tier4CompileThreshold=150000 -XX:Tier4BackEdgeThreshold=400000"
"%JAVA%" -XX:+UseSerialGC %LATE% %JAVA_OPTS% -jar "%~dp0..\mottle.jar" %*
exit /b %ERRORLEVEL%
